-- AlterTable
ALTER TABLE "people" ADD COLUMN     "first_password_until" TIMESTAMPTZ(3);

-- Passwords given before there was an end to them get the same time from now on.
UPDATE "people" SET "first_password_until" = now() + interval '72 hours' WHERE "active" AND NOT "secrets_own";
