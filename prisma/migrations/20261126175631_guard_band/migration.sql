-- AlterTable
ALTER TABLE "shop_profile" ADD COLUMN     "guard_band" TEXT NOT NULL DEFAULT 'none';
