-- CreateTable
CREATE TABLE "staged_tables" (
    "id" UUID NOT NULL,
    "kind" TEXT NOT NULL,
    "sha256" TEXT NOT NULL,
    "header" TEXT[],
    "rows" JSONB NOT NULL,
    "row_count" INTEGER NOT NULL,
    "uploaded_by" UUID NOT NULL,
    "uploaded_at" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "staged_tables_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "imported_tables" (
    "id" UUID NOT NULL,
    "kind" TEXT NOT NULL,
    "sha256" TEXT NOT NULL,
    "header" TEXT[],
    "rows" JSONB NOT NULL,
    "mapping" JSONB NOT NULL,
    "changes" JSONB NOT NULL,
    "new_rows" INTEGER NOT NULL,
    "changed_rows" INTEGER NOT NULL,
    "same_rows" INTEGER NOT NULL,
    "applied_by" UUID NOT NULL,
    "applied_at" TIMESTAMPTZ(3) NOT NULL,
    "entry_id" UUID NOT NULL,

    CONSTRAINT "imported_tables_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "opening_lots" (
    "id" UUID NOT NULL,
    "lot_id" UUID NOT NULL,
    "row_key" TEXT NOT NULL,
    "quantity" INTEGER NOT NULL,
    "bin" TEXT NOT NULL,
    "import_id" UUID NOT NULL,
    "entry_id" UUID NOT NULL,

    CONSTRAINT "opening_lots_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "kit_list_drafts" (
    "id" UUID NOT NULL,
    "manual_id" UUID NOT NULL,
    "model_id" UUID NOT NULL,
    "state" TEXT NOT NULL DEFAULT 'waiting',
    "lines" JSONB NOT NULL,
    "prepared_by" UUID NOT NULL,
    "prepared_at" TIMESTAMPTZ(3) NOT NULL,
    "revision_id" UUID,
    "version" INTEGER NOT NULL DEFAULT 1,

    CONSTRAINT "kit_list_drafts_pkey" PRIMARY KEY ("id")
);

-- CreateIndex
CREATE INDEX "staged_tables_uploaded_at_idx" ON "staged_tables"("uploaded_at");

-- CreateIndex
CREATE INDEX "imported_tables_applied_at_idx" ON "imported_tables"("applied_at");

-- CreateIndex
CREATE INDEX "imported_tables_entry_id_idx" ON "imported_tables"("entry_id");

-- CreateIndex
CREATE UNIQUE INDEX "opening_lots_lot_id_key" ON "opening_lots"("lot_id");

-- CreateIndex
CREATE UNIQUE INDEX "opening_lots_row_key_key" ON "opening_lots"("row_key");

-- CreateIndex
CREATE INDEX "opening_lots_import_id_idx" ON "opening_lots"("import_id");

-- CreateIndex
CREATE INDEX "opening_lots_entry_id_idx" ON "opening_lots"("entry_id");

-- CreateIndex
CREATE INDEX "kit_list_drafts_manual_id_state_idx" ON "kit_list_drafts"("manual_id", "state");

-- AddForeignKey
ALTER TABLE "opening_lots" ADD CONSTRAINT "opening_lots_import_id_fkey" FOREIGN KEY ("import_id") REFERENCES "imported_tables"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "kit_list_drafts" ADD CONSTRAINT "kit_list_drafts_manual_id_fkey" FOREIGN KEY ("manual_id") REFERENCES "manuals"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "kit_list_drafts" ADD CONSTRAINT "kit_list_drafts_model_id_fkey" FOREIGN KEY ("model_id") REFERENCES "unit_models"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

CREATE TRIGGER "only added" BEFORE UPDATE OR DELETE OR TRUNCATE ON "imported_tables" EXECUTE FUNCTION "refuse_change"();
CREATE TRIGGER "only added" BEFORE UPDATE OR DELETE OR TRUNCATE ON "opening_lots" EXECUTE FUNCTION "refuse_change"();
REVOKE UPDATE, DELETE ON "imported_tables", "opening_lots" FROM hubwright_server;
GRANT SELECT ON "imported_tables", "opening_lots" TO hubwright_retention;
ALTER TABLE "opening_lots" ADD CONSTRAINT "a lot of the opening stock has at least one piece" CHECK ("quantity" > 0);
ALTER TABLE "kit_list_drafts" ADD CONSTRAINT "a kit list draft waits, is issued or dropped"
  CHECK ("state" IN ('waiting', 'issued', 'dropped') AND ("state" = 'issued') = ("revision_id" IS NOT NULL));
CREATE UNIQUE INDEX "a model has one kit list waiting" ON "kit_list_drafts" ("model_id") WHERE "state" = 'waiting';
