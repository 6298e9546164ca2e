import { append, canonicalJson, type Entry } from '@hubwright/rules/chain';
import type { Purged } from './check-purges.ts';
import { Groups } from './groups.ts';
import type { AnchoredRow, HeadRow, LinkRow, RecordSource } from './source.ts';

type Found = (place: string, reason: string) => void;
interface Counted {
  chains: number;
  links: number;
}

/** Recomputes every chain from its first entry and compares it with its head and with what anchors saw of it. */
export async function checkChains(source: RecordSource, purged: Purged['chains'], fault: Found): Promise<Counted> {
  const counted: Counted = { chains: 0, links: 0 };
  const links = new Groups<LinkRow>(source.links());
  const heads = new Groups<HeadRow>(source.heads());
  const anchored = new Groups<AnchoredRow>(source.anchoredByChain());
  for (;;) {
    const subject = least([await links.next(), await heads.next(), await anchored.next()]);
    if (subject === undefined) return counted;
    const seen = await anchored.take(subject);
    const head = (await heads.take(subject))[0];
    const walk = new Walk((sequence, reason) => fault(`${subject}, entry ${sequence}`, reason), {
      anchored: seen,
      purged: purged.get(subject),
    });
    for await (const link of links.each(subject)) walk.see(link);
    if (walk.links > 0) counted.chains += 1;
    counted.links += walk.links;
    if (walk.links > 0 || (head?.sequence ?? 0) > 0 || seen.length > 0) walk.end(head);
  }
}

/** Entries that stand in no chain: a subject's links were taken away. */
export async function checkLooseEntries(source: RecordSource, fault: Found): Promise<void> {
  for await (const id of source.looseEntries()) fault(`entry ${id}`, 'the entry belongs to no chain');
}

function least(subjects: readonly (string | undefined)[]): string | undefined {
  return subjects.filter((subject) => subject !== undefined).sort()[0];
}

/** One pass over the links of one subject. */
class Walk {
  links = 0;
  /** The link before, or where a purge by policy left the chain. */
  private last: HeadRow | undefined;
  private at = 0;

  private readonly anchored: readonly AnchoredRow[];

  constructor(
    private readonly fault: (sequence: number, reason: string) => void,
    { anchored, purged }: { anchored: readonly AnchoredRow[]; purged: HeadRow | undefined },
  ) {
    this.anchored = anchored;
    this.last = purged;
    // What a purge took away cannot be compared, but where it ended can.
    if (purged) this.at = anchored.filter(({ sequence }) => sequence < purged.sequence).length;
    if (purged) this.compareAnchors(purged);
  }

  see(row: LinkRow): void {
    this.links += 1;
    const expected = (this.last?.sequence ?? 0) + 1;
    if (row.sequence !== expected) this.fault(row.sequence, `entry ${expected} is missing before this one`);
    else if (row.body === null) this.fault(row.sequence, 'the entry of this link is gone');
    else if (linkHash(this.last, row.body) !== row.hash)
      this.fault(row.sequence, 'the entry or its link was changed, or entries stand in another order');
    else if (!columnsAgree(row)) this.fault(row.sequence, 'a column beside the entry was changed');
    this.compareAnchors(row);
    this.last = row;
  }

  end(head: HeadRow | undefined): void {
    const { last } = this;
    for (const { anchor, sequence } of this.anchored.slice(this.at)) {
      const reason = last
        ? `anchor ${anchor} saw this entry; it is gone`
        : `anchor ${anchor} saw this chain; it is gone`;
      this.fault(sequence, reason);
    }
    if (!last && head && head.sequence > 0) this.fault(head.sequence, 'the chain of this subject is gone');
    if (last && (head?.sequence !== last.sequence || head.hash !== last.hash))
      this.fault(last.sequence, 'entries after this one are missing, or the head was changed');
  }

  private compareAnchors(row: HeadRow): void {
    for (let seen = this.anchored[this.at]; seen && seen.sequence <= row.sequence; seen = this.anchored[++this.at]) {
      if (seen.sequence !== row.sequence) this.fault(seen.sequence, `anchor ${seen.anchor} saw this entry; it is gone`);
      else if (seen.hash !== row.hash) this.fault(row.sequence, `the entry is not the one anchor ${seen.anchor} saw`);
    }
  }
}

function linkHash(before: HeadRow | undefined, body: string): string | undefined {
  const previous: Entry | undefined = before && {
    sequence: before.sequence,
    previous: before.hash, // not part of what the next link is made of
    hash: before.hash,
    body: null,
  };
  try {
    return append(previous, JSON.parse(body)).hash;
  } catch {
    return undefined;
  }
}

/** The text must be the canonical one, and the columns used for searching must say what it says. */
function columnsAgree({ body, columns }: LinkRow): boolean {
  const said = JSON.parse(body ?? 'null') as { command: string; at: string; who: { person: string } };
  if (canonicalJson(said) !== body) return false;
  if (!columns) return true;
  return said.command === columns.command && said.who.person === columns.person && said.at === columns.at;
}
