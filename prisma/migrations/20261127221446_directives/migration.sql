-- CreateTable
CREATE TABLE "directives" (
    "id" UUID NOT NULL,
    "kind" TEXT NOT NULL,
    "number" TEXT NOT NULL,
    "revision" TEXT NOT NULL,
    "title" TEXT NOT NULL,
    "issuer" TEXT NOT NULL,
    "issued_on" DATE NOT NULL,
    "effective_on" DATE NOT NULL,
    "binding" TEXT NOT NULL,
    "repeats" TEXT NOT NULL,
    "every_hours_tenths" INTEGER,
    "every_months" INTEGER,
    "end_of_month" BOOLEAN NOT NULL DEFAULT false,
    "action" TEXT NOT NULL,
    "terminating_action" TEXT,
    "defer_days" INTEGER,
    "labour_minor" INTEGER NOT NULL DEFAULT 0,
    "withdrawn_on" DATE,
    "withdrawn_because" TEXT,
    "issued_by" UUID NOT NULL,
    "issued_at" TIMESTAMPTZ(3) NOT NULL,
    "content_hash" TEXT NOT NULL,
    "entry_id" UUID NOT NULL,
    "version" INTEGER NOT NULL DEFAULT 1,

    CONSTRAINT "directives_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "directive_lines" (
    "id" UUID NOT NULL,
    "directive_id" UUID NOT NULL,
    "sequence" INTEGER NOT NULL,
    "model_id" UUID,
    "part_number" TEXT,
    "serial_from" TEXT,
    "serial_to" TEXT,

    CONSTRAINT "directive_lines_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "directive_links" (
    "from_id" UUID NOT NULL,
    "to_id" UUID NOT NULL,
    "kind" TEXT NOT NULL,

    CONSTRAINT "directive_links_pkey" PRIMARY KEY ("from_id","to_id","kind")
);

-- CreateTable
CREATE TABLE "directive_compliances" (
    "id" UUID NOT NULL,
    "directive_id" UUID NOT NULL,
    "item_id" UUID NOT NULL,
    "work_order_id" UUID NOT NULL,
    "outcome" TEXT NOT NULL,
    "done_on" DATE NOT NULL,
    "hours_tenths" INTEGER,
    "terminating" BOOLEAN NOT NULL DEFAULT false,
    "deferred_until" DATE,
    "method" TEXT NOT NULL,
    "sign_off_id" UUID NOT NULL,
    "recorded_by" UUID NOT NULL,
    "recorded_at" TIMESTAMPTZ(3) NOT NULL,
    "entry_id" UUID NOT NULL,

    CONSTRAINT "directive_compliances_pkey" PRIMARY KEY ("id")
);

-- CreateIndex
CREATE INDEX "directives_number_revision_idx" ON "directives"("number", "revision");

-- CreateIndex
CREATE INDEX "directives_entry_id_idx" ON "directives"("entry_id");

-- CreateIndex
CREATE UNIQUE INDEX "directives_issuer_number_revision_key" ON "directives"("issuer", "number", "revision");

-- CreateIndex
CREATE INDEX "serialized_items_part_number_idx" ON "serialized_items"("part_number");

-- CreateIndex
CREATE INDEX "directive_lines_model_id_idx" ON "directive_lines"("model_id");

-- CreateIndex
CREATE INDEX "directive_lines_part_number_idx" ON "directive_lines"("part_number");

-- CreateIndex
CREATE UNIQUE INDEX "directive_lines_directive_id_sequence_key" ON "directive_lines"("directive_id", "sequence");

-- CreateIndex
CREATE INDEX "directive_links_to_id_idx" ON "directive_links"("to_id");

-- CreateIndex
CREATE INDEX "directive_compliances_item_id_idx" ON "directive_compliances"("item_id");

-- CreateIndex
CREATE INDEX "directive_compliances_directive_id_idx" ON "directive_compliances"("directive_id");

-- CreateIndex
CREATE INDEX "directive_compliances_work_order_id_idx" ON "directive_compliances"("work_order_id");

-- CreateIndex
CREATE INDEX "directive_compliances_entry_id_idx" ON "directive_compliances"("entry_id");

-- AddForeignKey
ALTER TABLE "directive_lines" ADD CONSTRAINT "directive_lines_directive_id_fkey" FOREIGN KEY ("directive_id") REFERENCES "directives"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "directive_lines" ADD CONSTRAINT "directive_lines_model_id_fkey" FOREIGN KEY ("model_id") REFERENCES "unit_models"("id") ON DELETE SET NULL ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "directive_links" ADD CONSTRAINT "directive_links_from_id_fkey" FOREIGN KEY ("from_id") REFERENCES "directives"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "directive_links" ADD CONSTRAINT "directive_links_to_id_fkey" FOREIGN KEY ("to_id") REFERENCES "directives"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "directive_compliances" ADD CONSTRAINT "directive_compliances_directive_id_fkey" FOREIGN KEY ("directive_id") REFERENCES "directives"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "directive_compliances" ADD CONSTRAINT "directive_compliances_item_id_fkey" FOREIGN KEY ("item_id") REFERENCES "serialized_items"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

ALTER TABLE "directives" ADD CONSTRAINT "a recurring directive says how often, and only that one does"
  CHECK (("repeats" = 'recurring') = ("every_hours_tenths" IS NOT NULL OR "every_months" IS NOT NULL));
ALTER TABLE "directives" ADD CONSTRAINT "an airworthiness directive is required"
  CHECK ("kind" <> 'airworthiness-directive' OR "binding" = 'required');
ALTER TABLE "directives" ADD CONSTRAINT "a withdrawn directive says since when and why"
  CHECK (("withdrawn_on" IS NULL) = ("withdrawn_because" IS NULL));
ALTER TABLE "directive_lines" ADD CONSTRAINT "a line of a directive names a model or a part number"
  CHECK ("model_id" IS NOT NULL OR "part_number" IS NOT NULL);
ALTER TABLE "directive_links" ADD CONSTRAINT "a directive names another, not itself" CHECK ("from_id" <> "to_id");
ALTER TABLE "directive_compliances" ADD CONSTRAINT "a deferral says until when, and only that does"
  CHECK (("outcome" = 'deferred') = ("deferred_until" IS NOT NULL));

-- What a unit or part has complied with stays with it for its life, as its carried facts do.
CREATE TRIGGER "only added" BEFORE UPDATE OR DELETE OR TRUNCATE ON "directive_compliances" EXECUTE FUNCTION "refuse_change"();
REVOKE UPDATE, DELETE ON "directive_compliances" FROM hubwright_server;
GRANT SELECT ON "directive_compliances" TO hubwright_retention;
CREATE TRIGGER "only added" BEFORE UPDATE OR DELETE OR TRUNCATE ON "directive_lines" EXECUTE FUNCTION "refuse_change"();
REVOKE UPDATE, DELETE ON "directive_lines" FROM hubwright_server;
CREATE TRIGGER "only added" BEFORE UPDATE OR DELETE OR TRUNCATE ON "directive_links" EXECUTE FUNCTION "refuse_change"();
REVOKE UPDATE, DELETE ON "directive_links" FROM hubwright_server;
