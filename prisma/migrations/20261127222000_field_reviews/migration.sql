-- CreateTable
CREATE TABLE "field_reviews" (
    "id" UUID NOT NULL,
    "calibration_id" UUID NOT NULL,
    "instrument_id" UUID NOT NULL,
    "field_signature_id" UUID NOT NULL,
    "field_balance_id" UUID NOT NULL,
    "decision" TEXT,
    "reason" TEXT,
    "decided_by" UUID,
    "decided_at" TIMESTAMPTZ(3),
    "version" INTEGER NOT NULL DEFAULT 1,

    CONSTRAINT "field_reviews_pkey" PRIMARY KEY ("id")
);

-- CreateIndex
CREATE INDEX "field_reviews_field_balance_id_idx" ON "field_reviews"("field_balance_id");

-- CreateIndex
CREATE INDEX "field_reviews_instrument_id_idx" ON "field_reviews"("instrument_id");

-- CreateIndex
CREATE UNIQUE INDEX "field_reviews_calibration_id_field_signature_id_key" ON "field_reviews"("calibration_id", "field_signature_id");

-- AddForeignKey
ALTER TABLE "field_reviews" ADD CONSTRAINT "field_reviews_field_balance_id_fkey" FOREIGN KEY ("field_balance_id") REFERENCES "field_balances"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "field_reviews" ADD CONSTRAINT "field_reviews_instrument_id_fkey" FOREIGN KEY ("instrument_id") REFERENCES "instruments"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- It names signatures that are purged with the order, and goes with them.
ALTER TABLE "field_reviews" ADD CONSTRAINT "a doubt about a balance is decided by a person, with a reason, or not at all" CHECK (
  ("decision" IS NULL) = ("decided_by" IS NULL) AND ("decision" IS NULL) = ("reason" IS NULL) AND ("decision" IS NULL) = ("decided_at" IS NULL)
  AND ("decision" IS NULL OR "decision" IN ('stands', 'measure-again', 'customer-told')));
GRANT SELECT, DELETE ON "field_reviews" TO hubwright_retention;
REVOKE DELETE ON "field_reviews" FROM hubwright_server;
