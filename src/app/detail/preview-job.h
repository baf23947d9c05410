/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "preview-measure.h"

G_BEGIN_DECLS

/* The preview is computed in a thread of its own. The newest wish alone counts. */

#define BW_PREVIEW_OPENED BW_N_TEST_PICTURES /* in place of a BwTestKind: a picture from a file */

/**
 * BwPreviewSent:
 * @kind: BwTestKind, or %BW_PREVIEW_OPENED
 * @frame: for which a test picture is drawn
 *
 * The picture that the source sends. Counted references; never changed once it is made.
 */
typedef struct
{
  guint kind;
  BwTestFrame frame;
  BwPlanes *planes;
} BwPreviewSent;

BwPreviewSent *bw_preview_sent_ref (BwPreviewSent *sent);
void bw_preview_sent_unref (BwPreviewSent *sent);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (BwPreviewSent, bw_preview_sent_unref)

/**
 * BwPreviewWish:
 * @kind: of the picture
 * @sent: (nullable): owned; the opened picture, or a test picture that may do again
 * @preview: what to compute; its case and picture are put in by the job
 */
typedef struct
{
  BwDetailCase what;
  guint kind;
  BwPreviewSent *sent;
  BwPreview preview;
} BwPreviewWish;

/**
 * BwPreviewResult:
 * @wish: its @preview is whole, and its @sent is what was sent
 * @screen: in linear light
 * @untouched: in linear light
 * @exposure: with which nothing of @screen is cut off
 * @bursts: what is left of each, where it could be measured
 * @modulation: likewise, the share
 * @took_s: the time that it took
 *
 * Counted references; never changed once it is made.
 */
typedef struct
{
  BwPreviewWish wish;
  BwPlanes *screen;
  BwPlanes *untouched;
  double exposure;
  BwBurstState bursts[BW_N_TEST_BURSTS];
  double modulation[BW_N_TEST_BURSTS];
  double took_s;
} BwPreviewResult;

BwPreviewResult *bw_preview_result_ref (BwPreviewResult *result);
void bw_preview_result_unref (BwPreviewResult *result);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (BwPreviewResult, bw_preview_result_unref)

typedef struct _BwPreviewJob BwPreviewJob;

/**
 * BwPreviewDoneFunc:
 * @result: (transfer full) (nullable)
 * @error: (nullable): why there is none
 *
 * Called in the main thread, never for a wish that was cancelled.
 */
typedef void (*BwPreviewDoneFunc) (BwPreviewResult *result, const GError *error,
                                   gpointer user_data);

BwPreviewJob *bw_preview_job_new (BwPreviewDoneFunc done, gpointer user_data);
void bw_preview_job_free (BwPreviewJob *job);
void bw_preview_job_start (BwPreviewJob *job, const BwPreviewWish *wish);
void bw_preview_job_cancel (BwPreviewJob *job);
gboolean bw_preview_job_is_running (BwPreviewJob *job);
double bw_preview_job_running_s (BwPreviewJob *job);
double bw_preview_job_progress (BwPreviewJob *job);

void bw_preview_load_async (const char *path, GCancellable *cancellable,
                            GAsyncReadyCallback callback, gpointer user_data);
BwPreviewSent *bw_preview_load_finish (GAsyncResult *result, GError **error);

G_END_DECLS
