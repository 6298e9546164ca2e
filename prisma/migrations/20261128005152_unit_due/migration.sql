-- CreateTable
CREATE TABLE "unit_due" (
    "unit_id" UUID NOT NULL,
    "customer_id" UUID,
    "model_id" UUID,
    "aircraft_id" UUID,
    "registration" TEXT,
    "position" TEXT,
    "due_on" DATE,
    "earliest" DATE,
    "latest" DATE,
    "governed_by" TEXT NOT NULL,
    "governed_what" TEXT NOT NULL,
    "due_hours_tenths" INTEGER,
    "hours_left_tenths" INTEGER,
    "requirement" TEXT,
    "per_day" DOUBLE PRECISION,
    "basis" TEXT NOT NULL,
    "past_hours" BOOLEAN NOT NULL,
    "in_shop" BOOLEAN NOT NULL,
    "computed_on" DATE NOT NULL,
    "computed_at" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "unit_due_pkey" PRIMARY KEY ("unit_id")
);

-- CreateTable
CREATE TABLE "due_state" (
    "id" INTEGER NOT NULL DEFAULT 1,
    "transaction" BIGINT NOT NULL,
    "row" BIGINT NOT NULL,
    "whole_on" DATE,

    CONSTRAINT "due_state_pkey" PRIMARY KEY ("id")
);

-- CreateIndex
CREATE INDEX "unit_due_customer_id_due_on_unit_id_idx" ON "unit_due"("customer_id", "due_on", "unit_id");

-- CreateIndex
CREATE INDEX "unit_due_due_on_unit_id_idx" ON "unit_due"("due_on", "unit_id");

-- CreateIndex
CREATE INDEX "unit_due_model_id_due_on_idx" ON "unit_due"("model_id", "due_on");
