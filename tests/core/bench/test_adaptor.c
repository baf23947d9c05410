/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <math.h>
#include <string.h>

#include "properties.h"
#include "support.h"

static void
add (const char *group, const char *name, gconstpointer data, GTestDataFunc func)
{
  g_autofree char *path = g_strdup_printf ("/adaptor/%s/%s", group, name);
  g_test_add_data_func (path, data, func);
}

/* Every shipped entry is sound, says where its figures come from, and is written and read alike. */
static void
test_shipped (void)
{
  GPtrArray *adaptors = bw_catalogue_adaptors (bw_test_catalogue ());
  g_assert_cmpuint (adaptors->len, >, 20);
  for (guint i = 0; i < adaptors->len; i++)
    {
      BwAdaptor *adaptor = adaptors->pdata[i];
      g_autoptr (BwAdaptor) empty = bw_adaptor_new ();
      g_autoptr (GError) error = NULL;
      g_assert_true (bw_adaptor_check (adaptor, &error));
      g_assert_no_error (error);
      g_assert_cmpstr (adaptor->origin, !=, "");
      g_autofree char *fault = bw_property_fields_kept (&bw_adaptor_fields, adaptor, empty);
      g_assert_null (fault);
      g_auto (GStrv) rasters = bw_adaptor_rasters (adaptor);
      for (char **id = rasters; *id != NULL; id++)
        g_assert_nonnull (bw_catalogue_raster (bw_test_catalogue (), *id));
    }
}

/* What the trade calls an encoder, a transcoder and so on: one of each must be there. */
static void
test_kinds (void)
{
  GPtrArray *adaptors = bw_catalogue_adaptors (bw_test_catalogue ());
  guint kinds = 0;
  for (guint i = 0; i < adaptors->len; i++)
    kinds |= BW_BIT (((BwAdaptor *) adaptors->pdata[i])->kind);
  g_assert_cmpuint (kinds, ==, BW_BIT (BW_N_ADAPTORS) - 1);
}

typedef struct
{
  const char *name;
  const char *text; /* the keys after those that every case has */
  int code;         /* in BW_ADAPTOR_ERROR; -1: in BW_FIELD_ERROR */
  const char *key;
} BadCase;

static const BadCase bad_cases[] = {
  { "nothing-given", "kind=box\n", BW_ADAPTOR_ERROR_GIVES, "kind" },
  { "coded-from-what-is-there",
    "kind=box\ngives_signals=composite\ngives_syncs=in-video\nlevels=standard\n",
    BW_ADAPTOR_ERROR_SYSTEM, "gives_systems" },
  { "lead-that-changes", "kind=lead\ngives_signals=rgb\n", BW_ADAPTOR_ERROR_GIVES, "kind" },
  { "kind-unknown", "kind=gadget\n", -1, "kind" },
  { "kind-missing", "", -1, "kind" },
  { "converter-without-raster",
    "kind=scan-converter\ngives_signals=rgb\ngives_syncs=separate\nlevels=standard\n",
    BW_ADAPTOR_ERROR_RASTER, "gives_rasters" },
  { "box-with-raster", "kind=box\ngives_rasters=vesa-dmt-04\n", BW_ADAPTOR_ERROR_RASTER,
    "gives_rasters" },
  { "raster-unknown",
    "kind=scan-converter\ngives_signals=rgb\ngives_syncs=separate\nlevels=standard\n"
    "gives_rasters=vesa-dmt-04; no-such-raster\n",
    BW_ADAPTOR_ERROR_RASTER, "no-such-raster" },
  { "converter-without-sync", "kind=scan-converter\ngives_signals=rgb\ngives_rasters=vesa-dmt-04\n",
    BW_ADAPTOR_ERROR_GIVES, "gives_syncs" },
  { "sync-that-cannot-come",
    "kind=box\ngives_signals=component\ngives_syncs=on-green\nlevels=standard\n",
    BW_ADAPTOR_ERROR_SYNC, "gives_syncs" },
  { "sync-without-level", "kind=box\ngives_syncs=composite-sync\n", BW_ADAPTOR_ERROR_SYNC,
    "gives_sync" },
  { "composite-without-system",
    "kind=box\ntakes_signals=rgb\ngives_signals=composite\ngives_syncs=in-video\n"
    "levels=standard\n",
    BW_ADAPTOR_ERROR_SYSTEM, "gives_systems" },
  { "composite-of-anything",
    "kind=box\ngives_signals=composite\ngives_syncs=in-video\nlevels=standard\n",
    BW_ADAPTOR_ERROR_SYSTEM, "gives_systems" },
  { "composite-of-either",
    "kind=box\ntakes_signals=yc; rgb\ngives_signals=composite\ngives_syncs=in-video\n"
    "levels=standard\n",
    BW_ADAPTOR_ERROR_SYSTEM, "gives_systems" },
  { "two-polarities", "kind=box\ngives_polarities=negative; positive\n", BW_ADAPTOR_ERROR_ONE,
    "gives_polarities" },
  { "two-shapes", "kind=box\ngives_shapes=bi-level; tri-level\n", BW_ADAPTOR_ERROR_ONE,
    "gives_shapes" },
  { "setup-range", "kind=box\ngives_setup=0 IRE .. 7.5 IRE\n", BW_ADAPTOR_ERROR_ONE,
    "gives_setup" },
  { "price-without-unit", "kind=lead\nprice=40\n", BW_ADAPTOR_ERROR_PRICE, "price" },
  { "price-in-words", "kind=lead\nprice=cheap\n", BW_ADAPTOR_ERROR_PRICE, "price" },
  { "price-below-zero", "kind=lead\nprice=-3 EUR\n", BW_ADAPTOR_ERROR_PRICE, "price" },
  { "price-without-end", "kind=lead\nprice=1000000001 EUR\n", BW_ADAPTOR_ERROR_PRICE, "price" },
  { "price-with-comma", "kind=lead\nprice=4,50 EUR\n", BW_ADAPTOR_ERROR_PRICE, "price" },
  { "signal-unknown", "kind=box\ntakes_signals=rgb; smoke\ngives_video=0.7 V\n", -1,
    "takes_signals" },
  { "level-out-of-range", "kind=box\ngives_video=70 V\n", -1, "gives_video" },
  { "detail-without-unit", "kind=box\ngives_video=0.7 V\ndetail=5\n", -1, "detail" },
  { "rank-zero", "kind=lead\nrank=0\n", -1, "rank" },
};

/* The entry is refused with one fault that names file, group and key; the one after it is taken. */
static void
test_bad (gconstpointer data)
{
  const BadCase *c = data;
  g_autoptr (BwCatalogue) catalogue = bw_catalogue_new (NULL, NULL);
  GPtrArray *adaptors = bw_catalogue_adaptors (catalogue);
  guint before = adaptors->len;
  g_autoptr (GPtrArray) faults = bw_test_faults_new ();
  g_autofree char *text = g_strdup_printf ("[mine]\nname=M\norigin=Invented\n%s\n"
                                           "[next]\nname=N\norigin=Invented\nkind=lead\n",
                                           c->text);

  bw_catalogue_add_text (catalogue, BW_CATALOGUE_ADAPTORS, text, strlen (text), "adaptors.ini",
                         faults);
  g_assert_cmpuint (faults->len, ==, 1);
  g_assert_cmpuint (adaptors->len, ==, before + 1);
  if (faults->len != 1)
    return;
  const GError *fault = faults->pdata[0];
  if (c->code >= 0)
    g_assert_error (fault, BW_ADAPTOR_ERROR, c->code);
  else
    g_assert_true (fault->domain == BW_FIELD_ERROR);
  bw_test_assert_words (fault->message, WORDS ("adaptors.ini", "[mine]", c->key));
}

/* One's own entry of the same id replaces the shipped one; another id adds to them. */
static void
test_replace (void)
{
  const char *text = "[encoder]\nname=The grey box\norigin=Invented\nkind=box\n"
                     "gives_video=0.7 V\nprice=12.50 EUR\n"
                     "[mine]\nname=Mine\norigin=Invented\nkind=lead\n";
  g_autofree char *folder = bw_test_folder_new ();
  g_autofree char *path = g_build_filename (folder, "adaptors.ini", NULL);
  g_autoptr (GPtrArray) faults = bw_test_faults_new ();
  guint shipped = bw_catalogue_adaptors (bw_test_catalogue ())->len;

  g_assert_true (g_file_set_contents (path, text, -1, NULL));
  g_autoptr (BwCatalogue) catalogue = bw_catalogue_new (folder, faults);
  GPtrArray *adaptors = bw_catalogue_adaptors (catalogue);
  g_assert_true (bw_test_no_faults (faults));
  g_assert_cmpuint (adaptors->len, ==, shipped + 1);
  guint found = 0;
  for (guint i = 0; i < adaptors->len; i++)
    {
      const BwAdaptor *adaptor = adaptors->pdata[i];
      if (strcmp (adaptor->id, "encoder") != 0)
        continue;
      double money = 0;
      const char *unit = NULL;
      found++;
      g_assert_cmpstr (adaptor->name, ==, "The grey box");
      g_assert_true (bw_adaptor_price (adaptor, &money, &unit));
      g_assert_true (bw_near (money, 12.5, 1e-12));
      g_assert_cmpstr (unit, ==, "EUR");
    }
  g_assert_cmpuint (found, ==, 1);
  bw_test_folder_remove (g_steal_pointer (&folder));
}

static void
test_copy (void)
{
  GPtrArray *adaptors = bw_catalogue_adaptors (bw_test_catalogue ());
  const BwAdaptor *model = adaptors->pdata[adaptors->len - 1];
  g_autoptr (BwAdaptor) copy = bw_adaptor_copy (model);
  g_assert_cmpstr (copy->id, ==, model->id);
  g_assert_true (copy->id != model->id && copy->name != model->name);
  g_assert_true (bw_fields_equal (&bw_adaptor_fields, copy, model));
}

/* Our own order of reluctance: each kind before the next. */
static void
test_rank (void)
{
  g_autoptr (BwAdaptor) adaptor = bw_adaptor_new ();
  guint last = 0;
  for (guint kind = 0; kind < BW_N_ADAPTORS; kind++)
    {
      adaptor->kind = kind;
      g_assert_cmpuint (bw_adaptor_rank (adaptor), >=, last);
      last = bw_adaptor_rank (adaptor);
    }
  adaptor->rank = 7;
  g_assert_cmpuint (bw_adaptor_rank (adaptor), ==, 7);
}

/* How reluctantly each kind is used where nothing is said: our own order, a scan converter as three boxes, a box as
 * three passive parts and more, a part as two leads and more. */
static void
test_ranks (void)
{
  static const guint ranks[BW_N_ADAPTORS] = {
    [BW_ADAPTOR_LEAD] = 2,           [BW_ADAPTOR_TERMINATOR] = 4, [BW_ADAPTOR_SYNC_ATTENUATOR] = 5,
    [BW_ADAPTOR_VIDEO_ATTENUATOR] = 6, [BW_ADAPTOR_CAPACITOR] = 6,  [BW_ADAPTOR_BOX] = 20,
    [BW_ADAPTOR_CONVERTER] = 60,
  };
  for (guint kind = 0; kind < BW_N_ADAPTORS; kind++)
    {
      g_autoptr (BwAdaptor) adaptor = bw_adaptor_new ();
      adaptor->kind = kind;
      g_assert_cmpuint (bw_adaptor_rank (adaptor), ==, ranks[kind]);
      adaptor->rank = 1;
      g_assert_cmpuint (bw_adaptor_rank (adaptor), ==, 1);
    }
}

/* Each thing that a box may change is enough to make it one, and none of them is what a lead may do. */
static void
test_each_change (void)
{
  static const char *const changes[] = {
    "gives_signals=rgb",     "gives_systems=ntsc-m\ntakes_signals=composite", "gives_syncs=composite-sync",
    "gives_shapes=bi-level", "gives_polarities=negative",                     "levels=standard",
    "gives_video=0.7 V",     "gives_sync=0.3 V",                              "gives_setup=7.5 IRE",
    "gives_couplings=dc",    "gives_aspect=4:3",                              "underscan=yes",
  };
  for (gsize i = 0; i < G_N_ELEMENTS (changes); i++)
    for (int is_box = 0; is_box < 2; is_box++)
      {
        g_autoptr (BwCatalogue) catalogue = bw_catalogue_new (NULL, NULL);
        g_autoptr (GPtrArray) faults = bw_test_faults_new ();
        g_autofree char *text = g_strdup_printf ("[mine]\nname=M\norigin=Invented\nkind=%s\n%s\n",
                                                 is_box ? "box" : "lead", changes[i]);
        bw_catalogue_add_text (catalogue, BW_CATALOGUE_ADAPTORS, text, strlen (text), "adaptors.ini",
                               faults);
        const GError *fault = faults->len > 0 ? faults->pdata[0] : NULL;
        gboolean refused = g_error_matches (fault, BW_ADAPTOR_ERROR, BW_ADAPTOR_ERROR_GIVES)
                           && strstr (fault->message, "[mine] kind:") != NULL;
        if (refused == is_box)
          g_test_fail_printf ("%s, %d: %s", changes[i], is_box, fault != NULL ? fault->message : "");
      }
}

int
main (int argc, char **argv)
{
  bw_test_init (&argc, &argv);
  g_test_add_func ("/adaptor/shipped", test_shipped);
  g_test_add_func ("/adaptor/kinds", test_kinds);
  g_test_add_func ("/adaptor/replace", test_replace);
  g_test_add_func ("/adaptor/copy", test_copy);
  g_test_add_func ("/adaptor/rank", test_rank);
  for (gsize i = 0; i < G_N_ELEMENTS (bad_cases); i++)
    add ("bad", bad_cases[i].name, &bad_cases[i], test_bad);
  g_test_add_func ("/adaptor/ranks", test_ranks);
  g_test_add_func ("/adaptor/each-change", test_each_change);
  return g_test_run ();
}
