/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <stdlib.h>
#include <time.h>

#include <sys/resource.h>

#include "app/window/window.h"

/* How long the window takes with a large sheet, against the demonstration in the same run: to open
 * it, from reading the file to the first frame that shows it, and to show one edit. The goals: at
 * most a second to open 1,000 sources at 12 inputs, and at most one frame more than the
 * demonstration for an edit. The largest sheet that a file may hold is there to see that the time
 * does not grow with the number of cells. Nothing passes or fails by time. */

#define FRAME_S (1.0 / 60)
#define OPEN_GOAL_S 1.0
#define EDITS 25

typedef struct
{
  const char *name;
  guint n_sources; /* zero: the demonstration as it is */
  guint n_inputs;
} Size;

typedef struct
{
  double open_s;
  double edit_s;    /* the middle one, of processor time */
  double longest_s; /* the longest edit */
} Cost;

static double
now_s (void)
{
  return 1e-6 * (double) g_get_monotonic_time ();
}

/* What the program has worked: other programs and the wait for the next frame do not count. */
static double
worked_s (void)
{
  return (double) clock () / CLOCKS_PER_SEC;
}

static void
settle (void)
{
  while (g_main_context_iteration (NULL, FALSE))
    ;
}

/* Waits until what has changed is on the screen. */
static void
on_painted (gboolean *painted)
{
  *painted = TRUE;
}

static void
wait_for_frame (BwWindow *window)
{
  GdkFrameClock *frames = gtk_widget_get_frame_clock (GTK_WIDGET (window));
  gboolean painted = FALSE;
  gulong handler = g_signal_connect_swapped (frames, "after-paint", G_CALLBACK (on_painted),
                                             &painted);
  gdk_frame_clock_request_phase (frames, GDK_FRAME_CLOCK_PHASE_PAINT);
  while (!painted)
    g_main_context_iteration (NULL, TRUE);
  g_signal_handler_disconnect (frames, handler);
}

/* The demonstration's sources and inputs again and again, each with a name of its own. */
static char *
large_sheet (const char *demo, const Size *size, const BwCatalogue *catalogue)
{
  g_autoptr (GPtrArray) faults = g_ptr_array_new_with_free_func ((GDestroyNotify) g_error_free);
  g_autoptr (BwSheet) sheet = bw_sheet_load (demo, catalogue, faults);
  guint sources = sheet->sources->len, inputs = sheet->monitor->inputs->len;

  for (guint i = inputs; i < size->n_inputs; i++)
    {
      BwInput *input = bw_input_copy (bw_monitor_input (sheet->monitor, i % inputs));
      g_autofree char *name = g_steal_pointer (&input->name);
      input->name = g_strdup_printf ("%s %u", name, i);
      g_ptr_array_add (sheet->monitor->inputs, input);
    }
  for (guint i = sources; i < size->n_sources; i++)
    {
      BwSource *source = bw_source_copy (bw_sheet_source (sheet, i % sources));
      g_autofree char *name = g_steal_pointer (&source->name);
      source->name = g_strdup_printf ("%s %u", name, i);
      g_ptr_array_add (sheet->sources, source);
    }
  return bw_sheet_to_text (sheet, catalogue);
}

static int
compare (const void *a, const void *b)
{
  double x = *(const double *) a, y = *(const double *) b;
  return (x > y) - (x < y);
}

/* Edits the level of the first source up and down; the table and the findings show it. */
static void
measure_edits (BwWindow *window, Cost *cost)
{
  BwDocument *document = bw_window_get_document (window);
  const BwField *level = bw_field_find (bw_part_fields (BW_PART_SOURCE), "video_level");
  double times[EDITS];

  for (guint i = 0; i < EDITS; i++)
    {
      double from = worked_s ();
      if (!bw_document_set_field (document, BW_PART_SOURCE, 0, level, i % 2 == 0 ? "3 V" : "0.7 V",
                                  '.', NULL))
        g_error ("the level is not taken");
      wait_for_frame (window);
      times[i] = worked_s () - from;
      settle ();
    }
  qsort (times, EDITS, sizeof *times, compare);
  cost->edit_s = times[EDITS / 2];
  cost->longest_s = times[EDITS - 1];
}

static void
measure (const char *text, const BwCatalogue *catalogue, GSettings *settings, Cost *cost)
{
  g_autoptr (GPtrArray) faults = g_ptr_array_new_with_free_func ((GDestroyNotify) g_error_free);
  g_autoptr (BwDocument) document = bw_document_new (catalogue);
  g_autoptr (GBytes) bytes = g_bytes_new_static (text, strlen (text));
  double from = now_s ();

  if (!bw_document_load_bytes (document, bytes, "bench sheet", faults))
    g_error ("%s", ((GError *) faults->pdata[0])->message);
  BwWindow *window = bw_window_new (NULL, document, settings);
  gtk_window_present (GTK_WINDOW (window));
  gtk_test_widget_wait_for_draw (GTK_WIDGET (window));
  cost->open_s = now_s () - from;
  settle ();
  measure_edits (window, cost);
  gtk_window_destroy (GTK_WINDOW (window));
  settle ();
}

static void
report (const Size *size, const Cost *cost, const Cost *small)
{
  struct rusage usage;
  getrusage (RUSAGE_SELF, &usage);
  g_print ("%-20s open %7.0f ms (%5.2f x, goal %.0f ms)  edit %7.1f ms, longest %7.1f ms "
           "(%+.1f frames, goal at most +1)  memory so far %ld MiB\n",
           size->name, 1e3 * cost->open_s, cost->open_s / small->open_s, 1e3 * OPEN_GOAL_S,
           1e3 * cost->edit_s, 1e3 * cost->longest_s, (cost->edit_s - small->edit_s) / FRAME_S,
           usage.ru_maxrss / 1024);
}

int
main (int argc, char **argv)
{
  static const Size sizes[] = { { "demonstration", 0, 0 },
                                { "100 x 12", 100, 12 },
                                { "1,000 x 12", 1000, 12 },
                                { "5,000 x 64", BW_SHEET_MAX_SOURCES, BW_SHEET_MAX_INPUTS } };
  g_autoptr (GPtrArray) faults = g_ptr_array_new_with_free_func ((GDestroyNotify) g_error_free);
  const char *root = g_getenv ("BW_SOURCE_ROOT");
  guint n = argc > 1 ? (guint) atoi (argv[1]) : G_N_ELEMENTS (sizes);
  Cost first, small;

  g_assert_nonnull (root);
  gtk_init ();
  g_autofree char *path = g_build_filename (root, "data", "demo.bench", NULL);
  g_autoptr (BwCatalogue) catalogue = bw_catalogue_new (NULL, faults);
  g_autoptr (GSettings) settings = g_settings_new ("org.breezeway.Breezeway");
  for (guint i = 0; i < MIN (n, G_N_ELEMENTS (sizes)); i++)
    {
      g_autofree char *text = large_sheet (path, &sizes[i], catalogue);
      Cost cost;
      if (i == 0) /* what the first window of a process costs is not the sheet's */
        measure (text, catalogue, settings, &first);
      measure (text, catalogue, settings, &cost);
      if (i == 0)
        small = cost;
      report (&sizes[i], &cost, &small);
    }
  return EXIT_SUCCESS;
}
