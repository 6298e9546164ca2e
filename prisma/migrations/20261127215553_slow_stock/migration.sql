-- AlterTable
ALTER TABLE "shop_profile" ADD COLUMN     "dead_after_months" INTEGER NOT NULL DEFAULT 24,
ADD COLUMN     "slow_after_months" INTEGER NOT NULL DEFAULT 12;
