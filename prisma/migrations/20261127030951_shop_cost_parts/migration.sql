-- CreateTable
CREATE TABLE "shop_cost_parts" (
    "id" UUID NOT NULL,
    "work_order_id" UUID NOT NULL,
    "kit_line_id" UUID NOT NULL,
    "part_id" UUID NOT NULL,
    "position" TEXT NOT NULL,
    "quantity" INTEGER NOT NULL,
    "unit_price" TEXT NOT NULL,
    "step_id" UUID NOT NULL,
    "sign_off_id" UUID NOT NULL,
    "cause" TEXT NOT NULL,
    "reason" TEXT NOT NULL,
    "at" TIMESTAMPTZ(3) NOT NULL,
    "entry_id" UUID NOT NULL,

    CONSTRAINT "shop_cost_parts_pkey" PRIMARY KEY ("id")
);

-- CreateIndex
CREATE INDEX "shop_cost_parts_work_order_id_idx" ON "shop_cost_parts"("work_order_id");

-- CreateIndex
CREATE INDEX "shop_cost_parts_kit_line_id_idx" ON "shop_cost_parts"("kit_line_id");

-- CreateIndex
CREATE INDEX "shop_cost_parts_entry_id_idx" ON "shop_cost_parts"("entry_id");

ALTER TABLE "shop_cost_parts" ADD CONSTRAINT "a piece the shop pays for is at least one" CHECK ("quantity" > 0);
CREATE TRIGGER "only added" BEFORE UPDATE OR TRUNCATE ON "shop_cost_parts" EXECUTE FUNCTION "refuse_change"();
CREATE TRIGGER "kept until purged" BEFORE DELETE ON "shop_cost_parts" WHEN (current_user <> 'hubwright_retention') EXECUTE FUNCTION "refuse_change"();
REVOKE UPDATE, DELETE ON "shop_cost_parts" FROM hubwright_server;
GRANT SELECT, DELETE ON "shop_cost_parts" TO hubwright_retention;
