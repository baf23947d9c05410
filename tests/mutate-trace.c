/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Linked into a core that was compiled with -finstrument-functions, for tests/mutate.py: notes which
 * functions ran in the file that BW_TRACE names, a byte for each sixteen of the library. The file is
 * memory that all processes of a test share, so that it also knows of those that end by a signal, by
 * _exit() or as another user. */
#include <fcntl.h>
#include <stdlib.h>
#include <sys/mman.h>
#include <unistd.h>

#define UNTRACED __attribute__ ((no_instrument_function))
#define STEP 16 /* functions start on such bounds */
#define BYTES ((8 << 20) / STEP)

extern const char __ehdr_start[] __attribute__ ((visibility ("hidden")));
static unsigned char *ran; /* NULL until the file is there */

void UNTRACED __cyg_profile_func_enter (void *function, void *site);
void UNTRACED __cyg_profile_func_exit (void *function, void *site);

void
__cyg_profile_func_enter (void *function, void *site)
{
  unsigned long at = (unsigned long) ((const char *) function - __ehdr_start) / STEP;
  (void) site;
  if (ran != NULL && at < BYTES)
    ran[at] = 1;
}

void
__cyg_profile_func_exit (void *function, void *site)
{
  (void) function;
  (void) site;
}

static void UNTRACED __attribute__ ((constructor)) open_trace (void)
{
  int file = open (getenv ("BW_TRACE"), O_RDWR | O_CREAT | O_CLOEXEC, 0644);
  void *memory = MAP_FAILED;

  if (file >= 0 && ftruncate (file, BYTES) == 0)
    memory = mmap (NULL, BYTES, PROT_READ | PROT_WRITE, MAP_SHARED, file, 0);
  if (memory != MAP_FAILED)
    ran = memory;
  if (file >= 0)
    close (file);
}
