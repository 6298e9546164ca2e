-- AlterTable
ALTER TABLE "part_offers" ADD COLUMN     "supplier_part_number" TEXT NOT NULL DEFAULT '',
ADD COLUMN     "valid_from" DATE,
ADD COLUMN     "valid_until" DATE;
