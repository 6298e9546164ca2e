-- AlterTable
ALTER TABLE "applications" ADD COLUMN     "least_diameter" TEXT;

-- AlterTable
ALTER TABLE "findings" ADD COLUMN     "corrosion_class" TEXT,
ADD COLUMN     "spot" JSONB;

-- AlterTable
ALTER TABLE "measure_specs" ADD COLUMN     "by_diameter" JSONB NOT NULL DEFAULT '[]',
ADD COLUMN     "chart" JSONB,
ADD COLUMN     "dimension" TEXT,
ADD COLUMN     "oversizes" JSONB NOT NULL DEFAULT '[]',
ADD COLUMN     "station" TEXT,
ADD COLUMN     "zone" JSONB;

-- AlterTable
ALTER TABLE "route_steps" ADD COLUMN     "form" JSONB NOT NULL DEFAULT '[]',
ADD COLUMN     "when_shortened" BOOLEAN NOT NULL DEFAULT false;

-- AlterTable
ALTER TABLE "step_measures" ADD COLUMN     "basis" TEXT,
ADD COLUMN     "chart" JSONB,
ADD COLUMN     "dimension" TEXT,
ADD COLUMN     "station" TEXT,
ADD COLUMN     "zone" JSONB;

-- AlterTable
ALTER TABLE "traveler_steps" ADD COLUMN     "form" JSONB NOT NULL DEFAULT '[]';

-- AlterTable
ALTER TABLE "work_orders" ADD COLUMN     "shorten_to" TEXT;

-- CreateTable
CREATE TABLE "set_decisions" (
    "id" UUID NOT NULL,
    "work_order_id" UUID NOT NULL,
    "finding_id" UUID NOT NULL,
    "mates" JSONB NOT NULL,
    "reason" TEXT NOT NULL,
    "sign_off_id" UUID NOT NULL,
    "decided_at" TIMESTAMPTZ(3) NOT NULL,
    "entry_id" UUID NOT NULL,

    CONSTRAINT "set_decisions_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "blade_rules" (
    "id" UUID NOT NULL,
    "revision_id" UUID NOT NULL,
    "model_id" UUID NOT NULL,
    "content" JSONB NOT NULL,

    CONSTRAINT "blade_rules_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "carried_facts" (
    "id" UUID NOT NULL,
    "item_id" UUID NOT NULL,
    "kind" TEXT NOT NULL,
    "place" TEXT NOT NULL,
    "value" TEXT NOT NULL,
    "basis" TEXT NOT NULL,
    "work_order_id" UUID,
    "recorded_by" UUID NOT NULL,
    "recorded_at" TIMESTAMPTZ(3) NOT NULL,
    "entry_id" UUID NOT NULL,

    CONSTRAINT "carried_facts_pkey" PRIMARY KEY ("id")
);

-- CreateIndex
CREATE UNIQUE INDEX "set_decisions_finding_id_key" ON "set_decisions"("finding_id");

-- CreateIndex
CREATE UNIQUE INDEX "set_decisions_sign_off_id_key" ON "set_decisions"("sign_off_id");

-- CreateIndex
CREATE INDEX "set_decisions_work_order_id_idx" ON "set_decisions"("work_order_id");

-- CreateIndex
CREATE INDEX "set_decisions_entry_id_idx" ON "set_decisions"("entry_id");

-- CreateIndex
CREATE UNIQUE INDEX "blade_rules_revision_id_model_id_key" ON "blade_rules"("revision_id", "model_id");

-- CreateIndex
CREATE INDEX "carried_facts_item_id_kind_idx" ON "carried_facts"("item_id", "kind");

-- CreateIndex
CREATE INDEX "carried_facts_work_order_id_idx" ON "carried_facts"("work_order_id");

-- CreateIndex
CREATE INDEX "carried_facts_entry_id_idx" ON "carried_facts"("entry_id");

-- AddForeignKey
ALTER TABLE "set_decisions" ADD CONSTRAINT "set_decisions_finding_id_fkey" FOREIGN KEY ("finding_id") REFERENCES "findings"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "blade_rules" ADD CONSTRAINT "blade_rules_revision_id_fkey" FOREIGN KEY ("revision_id") REFERENCES "manual_revisions"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "carried_facts" ADD CONSTRAINT "carried_facts_item_id_fkey" FOREIGN KEY ("item_id") REFERENCES "serialized_items"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

CREATE TRIGGER "only added" BEFORE UPDATE OR DELETE OR TRUNCATE ON "carried_facts" EXECUTE FUNCTION "refuse_change"();
REVOKE UPDATE, DELETE ON "carried_facts" FROM hubwright_server;
GRANT SELECT ON "carried_facts" TO hubwright_retention;

CREATE TRIGGER "only added" BEFORE UPDATE OR TRUNCATE ON "set_decisions" EXECUTE FUNCTION "refuse_change"();
CREATE TRIGGER "kept until purged" BEFORE DELETE ON "set_decisions" WHEN (current_user <> 'hubwright_retention') EXECUTE FUNCTION "refuse_change"();
REVOKE UPDATE, DELETE ON "set_decisions" FROM hubwright_server;
GRANT SELECT, DELETE ON "set_decisions" TO hubwright_retention;
