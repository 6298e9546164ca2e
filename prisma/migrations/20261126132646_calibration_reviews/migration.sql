-- AlterTable
ALTER TABLE "instruments" ADD COLUMN     "uncertainty" TEXT,
ADD COLUMN     "unit" TEXT;

-- CreateTable
CREATE TABLE "calibrations" (
    "id" UUID NOT NULL,
    "instrument_id" UUID NOT NULL,
    "calibrated_on" DATE NOT NULL,
    "as_found" TEXT NOT NULL,
    "points" JSONB NOT NULL,
    "recorded_by" UUID NOT NULL,
    "entry_id" UUID NOT NULL,

    CONSTRAINT "calibrations_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "calibration_reviews" (
    "id" UUID NOT NULL,
    "calibration_id" UUID NOT NULL,
    "instrument_id" UUID NOT NULL,
    "sign_off_id" UUID NOT NULL,
    "work_order_id" UUID NOT NULL,
    "decision" TEXT,
    "reason" TEXT,
    "decided_by" UUID,
    "decided_at" TIMESTAMPTZ(3),
    "version" INTEGER NOT NULL DEFAULT 1,

    CONSTRAINT "calibration_reviews_pkey" PRIMARY KEY ("id")
);

-- CreateIndex
CREATE INDEX "calibrations_instrument_id_calibrated_on_idx" ON "calibrations"("instrument_id", "calibrated_on");

-- CreateIndex
CREATE INDEX "calibrations_entry_id_idx" ON "calibrations"("entry_id");

-- CreateIndex
CREATE INDEX "calibration_reviews_work_order_id_idx" ON "calibration_reviews"("work_order_id");

-- CreateIndex
CREATE INDEX "calibration_reviews_instrument_id_idx" ON "calibration_reviews"("instrument_id");

-- CreateIndex
CREATE UNIQUE INDEX "calibration_reviews_calibration_id_sign_off_id_key" ON "calibration_reviews"("calibration_id", "sign_off_id");

CREATE TRIGGER "only added" BEFORE UPDATE OR DELETE OR TRUNCATE ON "calibrations" EXECUTE FUNCTION "refuse_change"();
REVOKE UPDATE, DELETE ON "calibrations" FROM hubwright_server;
GRANT SELECT ON "calibrations" TO hubwright_retention;
