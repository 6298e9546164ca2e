-- CreateTable
CREATE TABLE "oven_bakes" (
    "id" UUID NOT NULL,
    "step_id" UUID NOT NULL,
    "load_id" UUID,
    "oven" TEXT NOT NULL DEFAULT '',
    "equipment_id" UUID,
    "begun_at" TIMESTAMPTZ(3) NOT NULL,
    "begun_by" UUID NOT NULL,
    "entered_at" TIMESTAMPTZ(3) NOT NULL,
    "late_reason" TEXT,
    "stands" BOOLEAN NOT NULL DEFAULT true,
    "withdrawn_by" UUID,
    "withdrawn_at" TIMESTAMPTZ(3),
    "withdraw_reason" TEXT,

    CONSTRAINT "oven_bakes_pkey" PRIMARY KEY ("id")
);

-- CreateIndex
CREATE INDEX "oven_bakes_step_id_idx" ON "oven_bakes"("step_id");

-- AddForeignKey
ALTER TABLE "oven_bakes" ADD CONSTRAINT "oven_bakes_step_id_fkey" FOREIGN KEY ("step_id") REFERENCES "traveler_steps"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "oven_bakes" ADD CONSTRAINT "oven_bakes_load_id_fkey" FOREIGN KEY ("load_id") REFERENCES "loads"("id") ON DELETE SET NULL ON UPDATE CASCADE;

CREATE UNIQUE INDEX "a part is in the oven once" ON "oven_bakes" ("step_id") WHERE "stands";
ALTER TABLE "oven_bakes" ADD CONSTRAINT "a bake that does not stand was withdrawn with a reason"
  CHECK ("stands" = ("withdrawn_at" IS NULL) AND "stands" = ("withdraw_reason" IS NULL));
