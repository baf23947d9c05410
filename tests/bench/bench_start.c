/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <math.h>
#include <stdlib.h>
#include <string.h>

#include <sys/resource.h>
#include <sys/wait.h>
#include <unistd.h>

#include "app/window/application.h"

/* What the program takes to start against a window with nothing but a label, in the same run: the
 * time from the start of the process to the second frame, processor time, and memory. The two are
 * started in turn, and the middle of several runs counts. The goal is a ratio of at most 1.25 each;
 * nothing passes or fails by time. */

#define RUNS 9
#define GOAL 1.25
#define FRAMES 2

typedef struct
{
  double wall_s;
  double cpu_s;
  double memory_b;
} Cost;

static gboolean
on_frame (GtkWidget *widget, GdkFrameClock *clock, gpointer user_data)
{
  guint *frames = user_data;
  if (++*frames <= FRAMES)
    return G_SOURCE_CONTINUE;
  _exit (EXIT_SUCCESS); /* what closing costs is not asked */
}

static void
watch (GtkWindow *window)
{
  static guint frames;
  gtk_widget_add_tick_callback (GTK_WIDGET (window), on_frame, &frames, NULL);
}

static void
on_empty (GtkApplication *application)
{
  GtkWidget *window = gtk_application_window_new (application);
  gtk_window_set_default_size (GTK_WINDOW (window), 1000, 650);
  gtk_window_set_child (GTK_WINDOW (window), gtk_label_new ("A window"));
  gtk_window_present (GTK_WINDOW (window));
  watch (GTK_WINDOW (window));
}

static void
on_window (GtkApplication *application, GtkWindow *window)
{
  watch (window);
}

static int
run_empty (void)
{
  g_autoptr (GtkApplication) application = gtk_application_new ("org.breezeway.Empty",
                                                                G_APPLICATION_NON_UNIQUE);
  g_signal_connect (application, "activate", G_CALLBACK (on_empty), NULL);
  return g_application_run (G_APPLICATION (application), 0, NULL);
}

/* With a sheet, if one is given. */
static int
run_breezeway (const char *sheet)
{
  char name[] = "breezeway";
  char *argv[] = { name, (char *) sheet, NULL };
  g_autoptr (BwApplication) application = bw_application_new ();
  g_application_set_flags (G_APPLICATION (application),
                           G_APPLICATION_HANDLES_OPEN | G_APPLICATION_NON_UNIQUE);
  g_signal_connect (application, "window-added", G_CALLBACK (on_window), NULL);
  return g_application_run (G_APPLICATION (application), sheet != NULL ? 2 : 1, argv);
}

static double
seconds (const struct timeval *time)
{
  return (double) time->tv_sec + 1e-6 * (double) time->tv_usec;
}

static void
start (const char *self, const char *what, const char *sheet, Cost *cost)
{
  struct rusage usage;
  int status;
  gint64 from = g_get_monotonic_time ();
  pid_t child = fork ();

  if (child == 0)
    {
      execl (self, self, what, sheet, NULL);
      _exit (127);
    }
  if (child < 0 || wait4 (child, &status, 0, &usage) != child || status != 0)
    g_error ("%s %s did not run", self, what);
  cost->wall_s = 1e-6 * (double) (g_get_monotonic_time () - from);
  cost->cpu_s = seconds (&usage.ru_utime) + seconds (&usage.ru_stime);
  cost->memory_b = 1024.0 * (double) usage.ru_maxrss;
}

static int
compare (const void *a, const void *b)
{
  double x = *(const double *) a, y = *(const double *) b;
  return (x > y) - (x < y);
}

static double
middle (const Cost *costs, gsize offset)
{
  double values[RUNS];
  for (guint i = 0; i < RUNS; i++)
    values[i] = *(const double *) ((const char *) &costs[i] + offset);
  qsort (values, RUNS, sizeof *values, compare);
  return values[RUNS / 2];
}

static void
report (const char *what, const Cost *own, const Cost *empty)
{
  static const struct
  {
    const char *name;
    gsize offset;
    double unit;
    const char *unit_name;
  } kinds[] = { { "time", offsetof (Cost, wall_s), 1e-3, "ms" },
                { "processor", offsetof (Cost, cpu_s), 1e-3, "ms" },
                { "memory", offsetof (Cost, memory_b), 1024.0 * 1024, "MiB" } };

  for (gsize i = 0; i < G_N_ELEMENTS (kinds); i++)
    {
      double mine = middle (own, kinds[i].offset), theirs = middle (empty, kinds[i].offset);
      g_print ("%-14s %-9s %6.0f %s against %6.0f %s: %.2f (goal %.2f)\n", what, kinds[i].name,
               mine / kinds[i].unit, kinds[i].unit_name, theirs / kinds[i].unit,
               kinds[i].unit_name, mine / theirs, GOAL);
    }
}

int
main (int argc, char **argv)
{
  Cost empty[RUNS], blank[RUNS], demo[RUNS];
  const char *root = g_getenv ("BW_SOURCE_ROOT");

  if (argc > 1 && strcmp (argv[1], "empty") == 0)
    return run_empty ();
  if (argc > 1 && strcmp (argv[1], "breezeway") == 0)
    return run_breezeway (argv[2]);
  g_assert_nonnull (root);
  g_autofree char *sheet = g_build_filename (root, "data", "demo.bench", NULL);
  for (guint i = 0; i < RUNS; i++)
    {
      start (argv[0], "empty", NULL, &empty[i]);
      start (argv[0], "breezeway", NULL, &blank[i]);
      start (argv[0], "breezeway", sheet, &demo[i]);
    }
  report ("without sheet", blank, empty);
  report ("demonstration", demo, empty);
  return EXIT_SUCCESS;
}
