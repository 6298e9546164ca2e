import { fileOperations } from '@hubwright/contracts/files/operations';
import { defineCommand } from '../../platform/command/command.ts';
import { found } from '../../platform/command/version.ts';
import type { FileStore } from '../../platform/files/store.ts';
import { addPhoto, chainOf, locksOf, workOrder } from './put-photo.ts';

export const addFindingPhoto = (files: FileStore) =>
  defineCommand(fileOperations.addPhoto, {
    locks: locksOf,
    async execute(context) {
      const { tx, input } = context;
      const row = await tx.finding.findUnique({ where: { id: input.findingId }, include: { workOrder } });
      const { id, number, ...finding } = found(row, 'This finding');
      const chains = [{ kind: 'finding', id }, chainOf(finding)];
      return addPhoto({ files, context, input }, { kind: 'finding', id, name: number, chains, ...finding });
    },
  });

export const addTravelerPhoto = (files: FileStore) =>
  defineCommand(fileOperations.addTravelerPhoto, {
    locks: locksOf,
    async execute(context) {
      const { tx, input } = context;
      const row = await tx.traveler.findUnique({ where: { id: input.travelerId }, include: { workOrder } });
      const { id, number, ...traveler } = found(row, 'This traveler');
      const chains = [{ kind: 'traveler', id }, chainOf(traveler)];
      return addPhoto({ files, context, input }, { kind: 'traveler', id, name: number, chains, ...traveler });
    },
  });

export const addStepPhoto = (files: FileStore) =>
  defineCommand(fileOperations.addStepPhoto, {
    locks: locksOf,
    async execute(context) {
      const { tx, input } = context;
      const traveler = { include: { workOrder } };
      const row = await tx.travelerStep.findUnique({ where: { id: input.stepId }, include: { traveler } });
      const { id, title, traveler: of } = found(row, 'This step');
      const chains = [{ kind: 'traveler', id: of.id }, chainOf(of)];
      const name = `${of.number}, ${title}`;
      return addPhoto({ files, context, input }, { kind: 'traveler-step', id, name, chains, workOrder: of.workOrder });
    },
  });

export const addConditionPhoto = (files: FileStore) =>
  defineCommand(fileOperations.addConditionPhoto, {
    locks: locksOf,
    async execute(context) {
      const { tx, input } = context;
      const row = found(await tx.workOrder.findUnique({ where: { id: input.workOrderId } }), 'This work order');
      const { id, number } = row;
      const chains = [{ kind: 'work-order', id }];
      return addPhoto({ files, context, input }, { kind: 'work-order', id, name: number, chains, workOrder: row });
    },
  });
