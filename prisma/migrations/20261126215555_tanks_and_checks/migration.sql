-- AlterTable
ALTER TABLE "loads" ADD COLUMN     "equipment_id" UUID;

-- AlterTable
ALTER TABLE "parts" ADD COLUMN     "out_time_hours" INTEGER;

-- AlterTable
ALTER TABLE "route_steps" ADD COLUMN     "equipment_kind" TEXT,
ADD COLUMN     "materials" TEXT[] DEFAULT ARRAY[]::TEXT[];

-- AlterTable
ALTER TABLE "sign_offs" ADD COLUMN     "equipment_id" UUID,
ADD COLUMN     "lot_ids" UUID[] DEFAULT ARRAY[]::UUID[];

-- AlterTable
ALTER TABLE "traveler_steps" ADD COLUMN     "equipment_kind" TEXT,
ADD COLUMN     "materials" TEXT[] DEFAULT ARRAY[]::TEXT[];

-- CreateTable
CREATE TABLE "freezer_moves" (
    "id" UUID NOT NULL,
    "lot_id" UUID NOT NULL,
    "to" TEXT NOT NULL,
    "at" TIMESTAMPTZ(3) NOT NULL,
    "person_id" UUID NOT NULL,
    "entry_id" UUID NOT NULL,

    CONSTRAINT "freezer_moves_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "equipment" (
    "id" UUID NOT NULL,
    "code" TEXT NOT NULL,
    "title" TEXT NOT NULL,
    "kind" TEXT NOT NULL,
    "process" TEXT NOT NULL,
    "in_service" BOOLEAN NOT NULL DEFAULT true,
    "checks" JSONB NOT NULL,
    "version" INTEGER NOT NULL DEFAULT 1,

    CONSTRAINT "equipment_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "equipment_readings" (
    "id" UUID NOT NULL,
    "equipment_id" UUID NOT NULL,
    "quantity" TEXT NOT NULL,
    "value" TEXT NOT NULL,
    "unit" TEXT NOT NULL,
    "low" TEXT,
    "high" TEXT,
    "good" BOOLEAN NOT NULL,
    "taken_at" TIMESTAMPTZ(3) NOT NULL,
    "late_reason" TEXT,
    "person_id" UUID NOT NULL,
    "entry_id" UUID NOT NULL,

    CONSTRAINT "equipment_readings_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "equipment_additions" (
    "id" UUID NOT NULL,
    "equipment_id" UUID NOT NULL,
    "what" TEXT NOT NULL,
    "amount" TEXT NOT NULL,
    "unit" TEXT NOT NULL,
    "added_at" TIMESTAMPTZ(3) NOT NULL,
    "person_id" UUID NOT NULL,
    "entry_id" UUID NOT NULL,

    CONSTRAINT "equipment_additions_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "equipment_doubts" (
    "id" UUID NOT NULL,
    "equipment_id" UUID NOT NULL,
    "reading_id" UUID NOT NULL,
    "sign_off_id" UUID NOT NULL,
    "work_order_id" UUID NOT NULL,
    "raised_at" TIMESTAMPTZ(3) NOT NULL,
    "decision" TEXT,
    "reason" TEXT,
    "decided_by" UUID,
    "decided_at" TIMESTAMPTZ(3),
    "version" INTEGER NOT NULL DEFAULT 1,

    CONSTRAINT "equipment_doubts_pkey" PRIMARY KEY ("id")
);

-- CreateIndex
CREATE INDEX "freezer_moves_lot_id_at_idx" ON "freezer_moves"("lot_id", "at");

-- CreateIndex
CREATE INDEX "freezer_moves_entry_id_idx" ON "freezer_moves"("entry_id");

-- CreateIndex
CREATE UNIQUE INDEX "equipment_code_key" ON "equipment"("code");

-- CreateIndex
CREATE INDEX "equipment_kind_idx" ON "equipment"("kind");

-- CreateIndex
CREATE INDEX "equipment_readings_equipment_id_quantity_taken_at_idx" ON "equipment_readings"("equipment_id", "quantity", "taken_at");

-- CreateIndex
CREATE INDEX "equipment_readings_entry_id_idx" ON "equipment_readings"("entry_id");

-- CreateIndex
CREATE INDEX "equipment_additions_equipment_id_added_at_idx" ON "equipment_additions"("equipment_id", "added_at");

-- CreateIndex
CREATE INDEX "equipment_additions_entry_id_idx" ON "equipment_additions"("entry_id");

-- CreateIndex
CREATE INDEX "equipment_doubts_work_order_id_idx" ON "equipment_doubts"("work_order_id");

-- CreateIndex
CREATE INDEX "equipment_doubts_equipment_id_idx" ON "equipment_doubts"("equipment_id");

-- CreateIndex
CREATE UNIQUE INDEX "equipment_doubts_reading_id_sign_off_id_key" ON "equipment_doubts"("reading_id", "sign_off_id");

-- CreateIndex
CREATE INDEX "sign_offs_equipment_id_performed_at_idx" ON "sign_offs"("equipment_id", "performed_at");

CREATE TRIGGER "only added" BEFORE UPDATE OR DELETE OR TRUNCATE ON "equipment_readings" EXECUTE FUNCTION "refuse_change"();
REVOKE UPDATE, DELETE ON "equipment_readings" FROM hubwright_server;
GRANT SELECT ON "equipment_readings" TO hubwright_retention;

CREATE TRIGGER "only added" BEFORE UPDATE OR DELETE OR TRUNCATE ON "equipment_additions" EXECUTE FUNCTION "refuse_change"();
REVOKE UPDATE, DELETE ON "equipment_additions" FROM hubwright_server;
GRANT SELECT ON "equipment_additions" TO hubwright_retention;

CREATE TRIGGER "only added" BEFORE UPDATE OR DELETE OR TRUNCATE ON "freezer_moves" EXECUTE FUNCTION "refuse_change"();
REVOKE UPDATE, DELETE ON "freezer_moves" FROM hubwright_server;
GRANT SELECT ON "freezer_moves" TO hubwright_retention;
