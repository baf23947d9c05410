/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "preview-job.h"

#include <string.h>

/* Shares of the whole time, for the progress. */
#define DRAWN 0.05
#define SCREENED 0.85

/* The picture that is sent */

static BwPreviewSent *
sent_new (guint kind, BwPlanes *planes)
{
  BwPreviewSent *sent = g_atomic_rc_box_new0 (BwPreviewSent);
  sent->kind = kind;
  sent->planes = planes;
  return sent;
}

/* @planes: (transfer full)
 *
 * Returns: (transfer full): a picture from a file */
static BwPreviewSent *
sent_new_opened (BwPlanes *planes)
{
  return sent_new (BW_PREVIEW_OPENED, planes);
}

BwPreviewSent *
bw_preview_sent_ref (BwPreviewSent *sent)
{
  return g_atomic_rc_box_acquire (sent);
}

static void
clear_sent (gpointer sent)
{
  bw_planes_free (((BwPreviewSent *) sent)->planes);
}

void
bw_preview_sent_unref (BwPreviewSent *sent)
{
  g_atomic_rc_box_release_full (sent, clear_sent);
}

/* Whether the picture at hand is the one that is wished. */
static gboolean
will_do (const BwPreviewSent *sent, guint kind, const BwTestFrame *frame)
{
  if (sent == NULL || sent->kind != kind)
    return FALSE;
  return kind == BW_PREVIEW_OPENED || memcmp (&sent->frame, frame, sizeof *frame) == 0;
}

static BwPreviewSent *
draw_sent (BwTestKind kind, const BwTestFrame *frame)
{
  cairo_surface_t *surface = bw_test_picture_draw (kind, frame);
  if (surface == NULL)
    return NULL;
  BwPreviewSent *sent = sent_new (kind, bw_planes_from_surface (surface));
  sent->frame = *frame;
  cairo_surface_destroy (surface);
  return sent;
}

/* Puts the picture into @wish. The case must be sound. */
static void
provide_sent (BwPreviewWish *wish)
{
  BwTestFrame frame = { 0 };
  int width, height;

  bw_test_frame_size (&wish->what, &width, &height);
  bw_test_frame_init (&frame, &wish->what, width, height);
  if (!will_do (wish->sent, wish->kind, &frame))
    {
      g_clear_pointer (&wish->sent, bw_preview_sent_unref);
      if (wish->kind < BW_N_TEST_PICTURES)
        wish->sent = draw_sent (wish->kind, &frame);
    }
  wish->preview.picture = wish->sent != NULL ? wish->sent->planes : NULL;
}

/* Computing, in the thread */

/**
 * Run:
 * @job: (nullable): who waits for it; seen by the main thread alone
 * @progress: in thousandths; atomic
 * @started_us: in monotonic time
 */
typedef struct
{
  BwPreviewJob *job;
  BwPreviewWish wish;
  int progress;
  gint64 started_us;
} Run;

struct _BwPreviewJob
{
  BwPreviewDoneFunc done;
  gpointer user_data;
  Run *run;                  /* nullable; lives as long as its task, which is not over yet */
  GCancellable *cancellable; /* of the run */
};

static void
run_free (Run *run)
{
  g_clear_pointer (&run->wish.sent, bw_preview_sent_unref);
  g_free (run);
}

BwPreviewResult *
bw_preview_result_ref (BwPreviewResult *result)
{
  g_return_val_if_fail (result != NULL, NULL);
  return g_atomic_rc_box_acquire (result);
}

static void
clear_result (gpointer data)
{
  BwPreviewResult *result = data;
  g_clear_pointer (&result->wish.sent, bw_preview_sent_unref);
  g_clear_pointer (&result->screen, bw_planes_free);
  g_clear_pointer (&result->untouched, bw_planes_free);
}

void
bw_preview_result_unref (BwPreviewResult *result)
{
  g_return_if_fail (result != NULL);
  g_atomic_rc_box_release_full (result, clear_result);
}

static void
set_progress (Run *run, double done)
{
  g_atomic_int_set (&run->progress, (int) (done * 1000));
}

static void
on_progress (double done, gpointer user_data)
{
  set_progress (user_data, DRAWN + (SCREENED - DRAWN) * done);
}

static void
measure (BwPreviewResult *result)
{
  for (guint burst = 0; burst < BW_N_TEST_BURSTS; burst++)
    result->bursts[burst] = result->wish.kind == BW_TEST_LINES
                                ? bw_burst_measure (&result->wish.preview,
                                                    &result->wish.sent->frame, result->screen,
                                                    burst, &result->modulation[burst])
                                : BW_BURST_ABSENT;
}

/* Whether the wish is sound, before a picture is drawn for it. */
static gboolean
check (const BwPreviewWish *wish, GError **error)
{
  const BwPlanes any = { 1, 1, { NULL } };
  BwPreview preview = wish->preview;
  preview.picture = &any;
  return bw_preview_check (&preview, error);
}

static BwPreviewResult *
compute (Run *run, GCancellable *cancellable, GError **error)
{
  g_autoptr (BwPreviewResult) result = g_atomic_rc_box_new0 (BwPreviewResult);
  BwPreviewWish *wish = &result->wish;

  *wish = run->wish;
  wish->sent = run->wish.sent != NULL ? bw_preview_sent_ref (run->wish.sent) : NULL;
  wish->preview.what = &wish->what;
  if (!check (wish, error))
    return NULL;
  provide_sent (wish);
  set_progress (run, DRAWN);
  result->screen = bw_preview_screen (&wish->preview, cancellable, on_progress, run, error);
  if (result->screen == NULL)
    return NULL;
  result->untouched = bw_preview_untouched (&wish->preview, cancellable, error);
  if (result->untouched == NULL)
    return NULL;
  result->exposure = bw_preview_exposure (&wish->preview);
  measure (result);
  result->took_s = (double) (g_get_monotonic_time () - run->started_us) * 1e-6;
  return g_steal_pointer (&result);
}

static void
run_in_thread (GTask *task, gpointer source, gpointer task_data, GCancellable *cancellable)
{
  GError *error = NULL;
  BwPreviewResult *result = compute (task_data, cancellable, &error);

  if (result != NULL)
    g_task_return_pointer (task, result, (GDestroyNotify) bw_preview_result_unref);
  else
    g_task_return_error (task, error);
}

/* The job, in the main thread */

/* A run without a job was cancelled: nobody waits for it, and the job may be gone. */
static void
on_done (GObject *source, GAsyncResult *async, gpointer user_data)
{
  Run *run = g_task_get_task_data (G_TASK (async));
  BwPreviewJob *job = run->job;
  g_autoptr (GError) error = NULL;
  BwPreviewResult *result = g_task_propagate_pointer (G_TASK (async), &error);

  if (job == NULL)
    {
      g_clear_pointer (&result, bw_preview_result_unref);
      return;
    }
  job->run = NULL;
  g_clear_object (&job->cancellable);
  job->done (result, error, job->user_data);
}

/**
 * bw_preview_job_new:
 *
 * Returns: (transfer full): a job with nothing to do yet
 */
BwPreviewJob *
bw_preview_job_new (BwPreviewDoneFunc done, gpointer user_data)
{
  BwPreviewJob *job = g_new0 (BwPreviewJob, 1);
  job->done = done;
  job->user_data = user_data;
  return job;
}

/**
 * bw_preview_job_free:
 *
 * Cancels what runs; @done is not called any more.
 */
void
bw_preview_job_free (BwPreviewJob *job)
{
  bw_preview_job_cancel (job);
  g_free (job);
}

/**
 * bw_preview_job_start:
 * @wish: copied; without a case and a picture in its @preview
 *
 * Starts to compute it. What runs is cancelled.
 */
void
bw_preview_job_start (BwPreviewJob *job, const BwPreviewWish *wish)
{
  Run *run = g_new0 (Run, 1);

  bw_preview_job_cancel (job);
  run->job = job;
  run->wish = *wish;
  run->wish.preview.what = &run->wish.what;
  if (wish->sent != NULL)
    bw_preview_sent_ref (wish->sent);
  run->started_us = g_get_monotonic_time ();
  job->run = run;
  job->cancellable = g_cancellable_new ();
  g_autoptr (GTask) task = g_task_new (NULL, job->cancellable, on_done, NULL);
  g_task_set_source_tag (task, bw_preview_job_start);
  g_task_set_task_data (task, run, (GDestroyNotify) run_free);
  g_task_run_in_thread (task, run_in_thread);
}

/**
 * bw_preview_job_cancel:
 *
 * Gives up what runs, if anything does. Its result is not told.
 */
void
bw_preview_job_cancel (BwPreviewJob *job)
{
  if (job->run == NULL)
    return;
  job->run->job = NULL;
  job->run = NULL;
  g_cancellable_cancel (job->cancellable);
  g_clear_object (&job->cancellable);
}

gboolean
bw_preview_job_is_running (BwPreviewJob *job)
{
  return job->run != NULL;
}

/**
 * bw_preview_job_running_s:
 *
 * Returns: for how long it has been running; zero if it is not
 */
double
bw_preview_job_running_s (BwPreviewJob *job)
{
  return job->run != NULL ? (double) (g_get_monotonic_time () - job->run->started_us) * 1e-6 : 0;
}

/**
 * bw_preview_job_progress:
 *
 * Returns: share of the work that is done, 0 to 1
 */
double
bw_preview_job_progress (BwPreviewJob *job)
{
  return job->run != NULL ? g_atomic_int_get (&job->run->progress) / 1000.0 : 0;
}

/* Loading */

static void
load_in_thread (GTask *task, gpointer source, gpointer task_data, GCancellable *cancellable)
{
  GError *error = NULL;
  BwPlanes *planes = bw_planes_load (task_data, &error);

  if (planes != NULL)
    g_task_return_pointer (task, sent_new_opened (planes), (GDestroyNotify) bw_preview_sent_unref);
  else
    g_task_return_error (task, error);
}

/**
 * bw_preview_load_async:
 * @path: a PNG file
 *
 * Reads a picture in a thread.
 */
void
bw_preview_load_async (const char *path, GCancellable *cancellable, GAsyncReadyCallback callback,
                       gpointer user_data)
{
  g_autoptr (GTask) task = g_task_new (NULL, cancellable, callback, user_data);
  g_task_set_source_tag (task, bw_preview_load_async);
  g_task_set_task_data (task, g_strdup (path), g_free);
  g_task_run_in_thread (task, load_in_thread);
}

/**
 * bw_preview_load_finish:
 *
 * Returns: (transfer full) (nullable): the picture; %NULL with @error in %BW_PICTURE_ERROR, or
 *   %G_IO_ERROR_CANCELLED
 */
BwPreviewSent *
bw_preview_load_finish (GAsyncResult *result, GError **error)
{
  return g_task_propagate_pointer (G_TASK (result), error);
}
