-- AlterTable
ALTER TABLE "vendor_pieces" ADD COLUMN     "lost" INTEGER NOT NULL DEFAULT 0;

-- CreateTable
CREATE TABLE "vendor_losses" (
    "id" UUID NOT NULL,
    "order_id" UUID NOT NULL,
    "work_order_id" UUID NOT NULL,
    "line_id" UUID,
    "lot_id" UUID,
    "quantity" INTEGER NOT NULL,
    "how" TEXT NOT NULL,
    "vendor_paper" TEXT NOT NULL,
    "reason" TEXT NOT NULL,
    "owner_id" UUID NOT NULL,
    "person_id" UUID NOT NULL,
    "witness_id" UUID,
    "at" TIMESTAMPTZ(3) NOT NULL,
    "entry_id" UUID NOT NULL,

    CONSTRAINT "vendor_losses_pkey" PRIMARY KEY ("id")
);

-- CreateIndex
CREATE INDEX "vendor_losses_work_order_id_idx" ON "vendor_losses"("work_order_id");

-- CreateIndex
CREATE INDEX "vendor_losses_order_id_idx" ON "vendor_losses"("order_id");

-- CreateIndex
CREATE INDEX "vendor_losses_lot_id_idx" ON "vendor_losses"("lot_id");

-- CreateIndex
CREATE INDEX "vendor_losses_entry_id_idx" ON "vendor_losses"("entry_id");

-- AddForeignKey
ALTER TABLE "vendor_losses" ADD CONSTRAINT "vendor_losses_order_id_fkey" FOREIGN KEY ("order_id") REFERENCES "vendor_orders"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "vendor_losses" ADD CONSTRAINT "vendor_losses_line_id_fkey" FOREIGN KEY ("line_id") REFERENCES "vendor_lines"("id") ON DELETE SET NULL ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "vendor_losses" ADD CONSTRAINT "vendor_losses_lot_id_fkey" FOREIGN KEY ("lot_id") REFERENCES "lots"("id") ON DELETE SET NULL ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "vendor_losses" ADD CONSTRAINT "vendor_losses_work_order_id_fkey" FOREIGN KEY ("work_order_id") REFERENCES "work_orders"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "vendor_losses" ADD CONSTRAINT "vendor_losses_owner_id_fkey" FOREIGN KEY ("owner_id") REFERENCES "customers"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- What is only added, and kept until its order's records are purged.
CREATE TRIGGER "only added" BEFORE UPDATE OR TRUNCATE ON "vendor_losses" EXECUTE FUNCTION "refuse_change"();
CREATE TRIGGER "kept until purged" BEFORE DELETE ON "vendor_losses" WHEN (current_user <> 'hubwright_retention') EXECUTE FUNCTION "refuse_change"();
REVOKE UPDATE, DELETE ON "vendor_losses" FROM hubwright_server;
GRANT SELECT, DELETE ON "vendor_losses" TO hubwright_retention;

ALTER TABLE "vendor_losses" ADD CONSTRAINT "a loss is a part of the unit or pieces of a rack" CHECK (("line_id" IS NULL) <> ("lot_id" IS NULL));
ALTER TABLE "vendor_losses" ADD CONSTRAINT "at least one piece was lost" CHECK ("quantity" >= 1);
ALTER TABLE "vendor_pieces" ADD CONSTRAINT "no more pieces come back or are lost than went out" CHECK ("back" >= 0 AND "lost" >= 0 AND "back" + "lost" <= "quantity");
