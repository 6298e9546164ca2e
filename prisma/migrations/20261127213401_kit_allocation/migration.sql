-- AlterTable
ALTER TABLE "reservations" ADD COLUMN     "frozen_at" TIMESTAMPTZ(3),
ADD COLUMN     "frozen_by" UUID,
ADD COLUMN     "frozen_reason" TEXT;

-- CreateTable
CREATE TABLE "allocation_policies" (
    "id" UUID NOT NULL,
    "version" INTEGER NOT NULL,
    "serving_order" TEXT NOT NULL,
    "likelihood" JSONB NOT NULL,
    "reason" TEXT NOT NULL,
    "person_id" UUID NOT NULL,
    "at" TIMESTAMPTZ(3) NOT NULL,
    "entry_id" UUID NOT NULL,

    CONSTRAINT "allocation_policies_pkey" PRIMARY KEY ("id")
);

-- CreateIndex
CREATE UNIQUE INDEX "allocation_policies_version_key" ON "allocation_policies"("version");

-- CreateIndex
CREATE INDEX "allocation_policies_entry_id_idx" ON "allocation_policies"("entry_id");

ALTER TABLE "reservations" ADD CONSTRAINT "a frozen promise says who froze it and why"
  CHECK (("frozen_at" IS NULL) = ("frozen_by" IS NULL) AND ("frozen_at" IS NULL) = ("frozen_reason" IS NULL));
ALTER TABLE "allocation_policies" ADD CONSTRAINT "the first served is by need date or by priority"
  CHECK ("serving_order" IN ('need-date', 'priority'));
CREATE TRIGGER "only added" BEFORE UPDATE OR DELETE OR TRUNCATE ON "allocation_policies" EXECUTE FUNCTION "refuse_change"();
REVOKE UPDATE, DELETE ON "allocation_policies" FROM hubwright_server;
GRANT SELECT ON "allocation_policies" TO hubwright_retention;
