#include "app-hands.h"
int
main (int argc, char **argv)
{
  gtk_test_init (&argc, &argv, NULL);
  return g_test_run ();
}
