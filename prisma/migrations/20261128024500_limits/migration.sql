-- AlterTable
ALTER TABLE "directives" ADD COLUMN     "first_days" INTEGER,
ADD COLUMN     "first_hours_tenths" INTEGER,
ADD COLUMN     "first_months" INTEGER,
ADD COLUMN     "first_total_tenths" INTEGER;

-- AlterTable
ALTER TABLE "life_limits" ADD COLUMN     "overhauls" INTEGER;

-- AlterTable
ALTER TABLE "quote_lines" ADD COLUMN     "directive_id" UUID,
ADD COLUMN     "item_id" UUID;

-- AlterTable
ALTER TABLE "tbo_rules" ADD COLUMN     "age_from_months" INTEGER,
ADD COLUMN     "age_to_months" INTEGER,
ADD COLUMN     "use_category" TEXT;

-- AlterTable
ALTER TABLE "time_records" ADD COLUMN     "since_new_overhauls" INTEGER;

-- CreateTable
CREATE TABLE "service_limits" (
    "id" UUID NOT NULL,
    "revision_id" UUID NOT NULL,
    "model_id" UUID NOT NULL,
    "content" JSONB NOT NULL,

    CONSTRAINT "service_limits_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "unit_uses" (
    "id" UUID NOT NULL,
    "item_id" UUID NOT NULL,
    "use_category" TEXT,
    "made_on" DATE,
    "basis" TEXT NOT NULL,
    "recorded_by" UUID NOT NULL,
    "recorded_at" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "unit_uses_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "storage_periods" (
    "id" UUID NOT NULL,
    "period_id" UUID NOT NULL,
    "supersedes_id" UUID,
    "item_id" UUID NOT NULL,
    "preservation" TEXT NOT NULL,
    "from_date" DATE NOT NULL,
    "to_date" DATE,
    "inspected_on" DATE,
    "withdrawn" BOOLEAN NOT NULL DEFAULT false,
    "basis" TEXT NOT NULL,
    "recorded_by" UUID NOT NULL,
    "recorded_at" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "storage_periods_pkey" PRIMARY KEY ("id")
);

-- CreateIndex
CREATE UNIQUE INDEX "service_limits_revision_id_model_id_key" ON "service_limits"("revision_id", "model_id");

-- CreateIndex
CREATE INDEX "unit_uses_item_id_recorded_at_idx" ON "unit_uses"("item_id", "recorded_at");

-- CreateIndex
CREATE UNIQUE INDEX "a storage row is superseded once" ON "storage_periods"("supersedes_id");

-- CreateIndex
CREATE INDEX "storage_periods_item_id_idx" ON "storage_periods"("item_id");

-- CreateIndex
CREATE INDEX "storage_periods_period_id_idx" ON "storage_periods"("period_id");

-- AddForeignKey
ALTER TABLE "service_limits" ADD CONSTRAINT "service_limits_revision_id_fkey" FOREIGN KEY ("revision_id") REFERENCES "manual_revisions"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "unit_uses" ADD CONSTRAINT "unit_uses_item_id_fkey" FOREIGN KEY ("item_id") REFERENCES "serialized_items"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "storage_periods" ADD CONSTRAINT "storage_periods_item_id_fkey" FOREIGN KEY ("item_id") REFERENCES "serialized_items"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "storage_periods" ADD CONSTRAINT "storage_periods_supersedes_id_fkey" FOREIGN KEY ("supersedes_id") REFERENCES "storage_periods"("id") ON DELETE SET NULL ON UPDATE CASCADE;

-- What is only added.
CREATE TRIGGER "only added" BEFORE UPDATE OR DELETE OR TRUNCATE ON "unit_uses" EXECUTE FUNCTION "refuse_change"();
REVOKE UPDATE, DELETE ON "unit_uses" FROM hubwright_server;
GRANT SELECT ON "unit_uses" TO hubwright_retention;
CREATE TRIGGER "only added" BEFORE UPDATE OR DELETE OR TRUNCATE ON "storage_periods" EXECUTE FUNCTION "refuse_change"();
REVOKE UPDATE, DELETE ON "storage_periods" FROM hubwright_server;
GRANT SELECT ON "storage_periods" TO hubwright_retention;

ALTER TABLE "storage_periods" ADD CONSTRAINT "a unit is taken out of storage after it was put there" CHECK ("to_date" IS NULL OR "to_date" >= "from_date");
ALTER TABLE "tbo_rules" ADD CONSTRAINT "a rule begins at an age before it ends" CHECK ("age_to_months" IS NULL OR "age_to_months" > coalesce("age_from_months", 0));
ALTER TABLE "life_limits" ADD CONSTRAINT "a life limit in overhauls is at least one" CHECK ("overhauls" IS NULL OR "overhauls" >= 1);
ALTER TABLE "life_limits" DROP CONSTRAINT "a life limit names hours, cycles or both";
ALTER TABLE "life_limits" ADD CONSTRAINT "a life limit names hours, cycles or overhauls" CHECK ("hours_tenths" IS NOT NULL OR "cycles" IS NOT NULL OR "overhauls" IS NOT NULL);
