ALTER TABLE "vendor_losses" RENAME CONSTRAINT "at least one piece was lost" TO "a loss is at least one piece";
ALTER TABLE "vendor_pieces" RENAME CONSTRAINT "no more pieces come back or are lost than went out" TO "a vendor brings back or loses no more pieces than went out";
