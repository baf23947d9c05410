/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Linked into a core that was compiled with -finstrument-functions, for tests/mutate.py: writes which
 * functions ran, as offsets into the library, to the file that BW_TRACE names. */
#include <fcntl.h>
#include <stdio.h>
#include <stdlib.h>
#include <unistd.h>

#define UNTRACED __attribute__ ((no_instrument_function))
#define STEP 16 /* functions start on such bounds */

extern const char __ehdr_start[] __attribute__ ((visibility ("hidden")));
static unsigned char ran[(8 << 20) / STEP];

void UNTRACED __cyg_profile_func_enter (void *function, void *site);
void UNTRACED __cyg_profile_func_exit (void *function, void *site);

void
__cyg_profile_func_enter (void *function, void *site)
{
  unsigned long at = (unsigned long) ((const char *) function - __ehdr_start) / STEP;
  (void) site;
  if (at < sizeof ran)
    ran[at] = 1;
}

void
__cyg_profile_func_exit (void *function, void *site)
{
  (void) function;
  (void) site;
}

/* One write for each process: several may write to the file. */
static void UNTRACED __attribute__ ((destructor)) write_trace (void)
{
  static char text[1 << 20];
  int length = 0, file = open (getenv ("BW_TRACE"), O_WRONLY | O_APPEND | O_CREAT, 0644);

  for (unsigned long i = 0; i < sizeof ran && length < (int) sizeof text - 32; i++)
    if (ran[i])
      length += snprintf (text + length, 32, "%lx\n", i);
  if (file >= 0 && write (file, text, (size_t) length) == length)
    close (file);
}
