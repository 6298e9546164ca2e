-- AlterTable
ALTER TABLE "peening_lots" ADD COLUMN     "closed_by" UUID,
ADD COLUMN     "decided_at" TIMESTAMPTZ(3),
ADD COLUMN     "decided_by" UUID,
ADD COLUMN     "media_id" UUID,
ADD COLUMN     "meter_hours" TEXT,
ADD COLUMN     "signed_at" TIMESTAMPTZ(3),
ADD COLUMN     "signed_by" UUID;

-- AlterTable
ALTER TABLE "peening_setups" ADD COLUMN     "media_id" UUID;

-- CreateTable
CREATE TABLE "peening_media" (
    "id" UUID NOT NULL,
    "code" TEXT NOT NULL,
    "size" TEXT NOT NULL,
    "supplier" TEXT NOT NULL,
    "supplier_lot" TEXT NOT NULL,
    "certificate" TEXT NOT NULL,
    "limits" JSONB NOT NULL,
    "every_days" INTEGER NOT NULL,
    "every_hours" TEXT,
    "machine_id" UUID NOT NULL,
    "put_in_by" UUID NOT NULL,
    "put_in_at" TIMESTAMPTZ(3) NOT NULL,
    "taken_out_at" TIMESTAMPTZ(3),
    "taken_out_for" TEXT,
    "version" INTEGER NOT NULL DEFAULT 1,

    CONSTRAINT "peening_media_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "peening_checks" (
    "id" UUID NOT NULL,
    "media_id" UUID NOT NULL,
    "sieves" JSONB NOT NULL,
    "broken" INTEGER NOT NULL,
    "clean" BOOLEAN NOT NULL,
    "note" TEXT NOT NULL,
    "meter_hours" TEXT,
    "passed" BOOLEAN NOT NULL,
    "reasons" TEXT[],
    "checked_by" UUID NOT NULL,
    "checked_at" TIMESTAMPTZ(3) NOT NULL,
    "entry_id" UUID NOT NULL,

    CONSTRAINT "peening_checks_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "peening_reviews" (
    "id" UUID NOT NULL,
    "check_id" UUID NOT NULL,
    "lot_id" UUID NOT NULL,
    "work_order_id" UUID NOT NULL,
    "decision" TEXT,
    "reason" TEXT,
    "decided_by" UUID,
    "decided_at" TIMESTAMPTZ(3),
    "version" INTEGER NOT NULL DEFAULT 1,

    CONSTRAINT "peening_reviews_pkey" PRIMARY KEY ("id")
);

-- CreateIndex
CREATE UNIQUE INDEX "peening_media_code_key" ON "peening_media"("code");

-- CreateIndex
CREATE INDEX "peening_media_machine_id_idx" ON "peening_media"("machine_id");

-- CreateIndex
CREATE INDEX "peening_checks_media_id_checked_at_idx" ON "peening_checks"("media_id", "checked_at");

-- CreateIndex
CREATE INDEX "peening_checks_entry_id_idx" ON "peening_checks"("entry_id");

-- CreateIndex
CREATE INDEX "peening_reviews_work_order_id_idx" ON "peening_reviews"("work_order_id");

-- CreateIndex
CREATE INDEX "peening_reviews_lot_id_idx" ON "peening_reviews"("lot_id");

-- CreateIndex
CREATE UNIQUE INDEX "peening_reviews_check_id_lot_id_work_order_id_key" ON "peening_reviews"("check_id", "lot_id", "work_order_id");

-- CreateIndex
CREATE INDEX "peening_lots_media_id_idx" ON "peening_lots"("media_id");

-- AddForeignKey
ALTER TABLE "peening_media" ADD CONSTRAINT "peening_media_machine_id_fkey" FOREIGN KEY ("machine_id") REFERENCES "peening_machines"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "peening_checks" ADD CONSTRAINT "peening_checks_media_id_fkey" FOREIGN KEY ("media_id") REFERENCES "peening_media"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "peening_reviews" ADD CONSTRAINT "peening_reviews_check_id_fkey" FOREIGN KEY ("check_id") REFERENCES "peening_checks"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "peening_reviews" ADD CONSTRAINT "peening_reviews_lot_id_fkey" FOREIGN KEY ("lot_id") REFERENCES "peening_lots"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "peening_setups" ADD CONSTRAINT "peening_setups_media_id_fkey" FOREIGN KEY ("media_id") REFERENCES "peening_media"("id") ON DELETE SET NULL ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "peening_lots" ADD CONSTRAINT "peening_lots_media_id_fkey" FOREIGN KEY ("media_id") REFERENCES "peening_media"("id") ON DELETE SET NULL ON UPDATE CASCADE;

CREATE TRIGGER "only added" BEFORE UPDATE OR DELETE OR TRUNCATE ON "peening_checks" EXECUTE FUNCTION "refuse_change"();
REVOKE UPDATE, DELETE ON "peening_checks" FROM hubwright_server;
GRANT SELECT ON "peening_checks" TO hubwright_retention;
CREATE UNIQUE INDEX "a machine holds one media lot" ON "peening_media" ("machine_id") WHERE "taken_out_at" IS NULL;
