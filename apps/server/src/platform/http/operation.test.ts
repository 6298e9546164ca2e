import { read } from '@hubwright/contracts/operation';
import { describe, expect, it } from '@jest/globals';
import { StreamableFile } from '@nestjs/common';
import { z } from 'zod';
import { Operation } from './operation.ts';

const shown = read({
  ...{ id: 'show-thing', noun: 'server', path: '/api/thing', access: 'public', summary: 'A thing' },
  input: z.strictObject({}),
  output: z.object({ name: z.string(), inside: z.array(z.object({ id: z.int() })) }),
});

class Things {
  reply: unknown;
  @Operation(shown)
  show(): unknown {
    return this.reply;
  }
}

function reply(value: unknown): unknown {
  return Object.assign(new Things(), { reply: value }).show();
}

describe("a read's reply", () => {
  it('leaves without what the contract does not name, at every depth', async () => {
    const stored = { name: 'hub', secret: 'x', inside: [{ id: 1, hash: 'y' }] };
    await expect(reply(Promise.resolve(stored))).resolves.toEqual({ name: 'hub', inside: [{ id: 1 }] });
    await expect(reply(stored)).resolves.toEqual({ name: 'hub', inside: [{ id: 1 }] });
  });

  it('does not leave at all when something the contract names is missing or of another kind', async () => {
    await expect(reply({ name: 'hub', inside: [{ id: 'one' }] })).rejects.toThrow();
    await expect(reply({ inside: [] })).rejects.toThrow();
  });

  it('may be a file', async () => {
    const file = new StreamableFile(Buffer.from('drawing'));
    await expect(reply(file)).resolves.toBe(file);
  });
});
