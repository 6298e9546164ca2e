-- DropIndex
DROP INDEX "part_offers_part_id_supplier_id_key";

-- AlterTable
ALTER TABLE "purchase_order_lines" ADD COLUMN     "supplier_part_number" TEXT NOT NULL DEFAULT '';

-- CreateIndex
CREATE INDEX "part_offers_part_id_supplier_id_idx" ON "part_offers"("part_id", "supplier_id");
