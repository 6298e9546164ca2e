/** One open live stream, as a browser's EventSource would hold it. */
export class EventStream {
  readonly events: { id: string; nouns: string[]; at: number }[] = [];
  readonly named: string[] = [];
  /** The server ended it. */
  ended = false;
  private readonly abort = new AbortController();
  private readonly waiting: (() => void)[] = [];

  static async open(address: string, cookie: string, lastEventId?: string): Promise<EventStream> {
    const stream = new EventStream();
    const response = await fetch(`${address}/api/live`, {
      headers: { cookie, ...(lastEventId ? { 'last-event-id': lastEventId } : {}) },
      signal: stream.abort.signal,
    });
    if (response.status !== 200 || !response.body) throw new Error(`live stream answered ${response.status}`);
    void stream.read(response.body);
    await stream.until(() => stream.named.includes('hello'));
    return stream;
  }

  close(): void {
    this.abort.abort();
  }

  /** Waits until what has arrived satisfies the test, at most five seconds. */
  async until(satisfied: () => boolean): Promise<void> {
    const end = Date.now() + 5_000;
    while (!satisfied()) {
      if (Date.now() > end)
        throw new Error(`nothing of the kind arrived; so far ${JSON.stringify(this.events)} ${this.named}`);
      await new Promise<void>((resolve) => {
        this.waiting.push(resolve);
        setTimeout(resolve, 200);
      });
    }
  }

  private async read(body: ReadableStream<Uint8Array>): Promise<void> {
    let text = '';
    try {
      for await (const chunk of body) {
        text += new TextDecoder().decode(chunk);
        const blocks = text.split('\n\n');
        text = blocks.pop() ?? '';
        for (const block of blocks) this.take(block);
      }
      this.ended = true;
      for (const wake of this.waiting.splice(0)) wake();
    } catch {
      // The test closed the stream.
    }
  }

  private take(block: string): void {
    const field = (name: string) =>
      block
        .split('\n')
        .find((line) => line.startsWith(`${name}: `))
        ?.slice(name.length + 2);
    const [name, id, data] = [field('event'), field('id'), field('data')];
    if (name) this.named.push(name);
    else if (id && data) this.events.push({ id, nouns: JSON.parse(data).nouns, at: performance.now() });
    for (const wake of this.waiting.splice(0)) wake();
  }
}
