import type { Fault, Finding, Input, State, Word } from './state';
import { fill } from './words';

/** How long a value waits for the next press or the next key before it is sent, in ms. */
const pause = { press: 250, key: 700 };

type Trouble = { text: string; fault: Fault | null; value: string };

/** What is on the desk: the state of the piece, what is being changed, what went wrong. */
class Desk {
  state = $state.raw<State | null>(null);
  /** Values on their way, by input. */
  sent = $state<Record<string, string>>({});
  /** What was not taken, by input. */
  trouble = $state<Record<string, Trouble>>({});
  /** A message for the whole page. */
  message = $state('');
  /** What is read out. */
  spoken = $state('');
  busy = $state(0);
  lost = $state(false);
  /** The mark of the chosen part. */
  chosen = $state('');

  #timers: Record<string, ReturnType<typeof setTimeout>> = {};
  #queue: Promise<void> = Promise.resolve();

  say = (key: Word, figures: Record<string, string | number> = {}): string => {
    const text = this.state?.words[key];
    return text === undefined ? '' : fill(text, figures);
  };

  /** Whether figures on show may not be those of the values in the fields. */
  get stale(): boolean {
    return this.busy > 0 || this.state?.stale === true || Object.keys(this.sent).length > 0;
  }

  /** What is told of: all that is not simply right, or had nothing to judge. */
  get told(): Finding[] {
    return this.state?.findings.filter((f) => f.sign !== 'right' && f.sign !== 'idle') ?? [];
  }

  async open(): Promise<void> {
    await this.refresh();
    const events = new EventSource('api/events');
    events.addEventListener('changed', (e) => {
      if (this.busy === 0 && (e as MessageEvent<string>).data !== this.state?.revision) void this.refresh();
    });
    events.addEventListener('error', () => (this.lost = true));
    events.addEventListener('open', () => {
      if (!this.lost) return;
      this.lost = false;
      this.spoken = this.say('app.back-again');
      void this.refresh();
    });
  }

  async refresh(): Promise<void> {
    if (this.busy > 0) return;
    try {
      const answer = await fetch('api/state');
      if (answer.ok) this.#show((await answer.json()) as State);
      else this.message = ((await answer.json()) as Fault).text;
      this.lost = false;
    } catch {
      this.lost = true;
    }
  }

  #show(state: State): void {
    this.state = state;
    for (const p of state.parts) if (p.mark === this.chosen) return;
    this.chosen = '';
  }

  /** Takes a value typed or chosen; it is sent when the maker pauses. */
  set(input: Input, value: string, by: keyof typeof pause | 'now' = 'press'): void {
    if (by === 'now' && this.sent[input.name] === undefined) return;
    this.sent[input.name] = value;
    delete this.trouble[input.name];
    clearTimeout(this.#timers[input.name]);
    this.#timers[input.name] = setTimeout(() => this.#send(input, value), by === 'now' ? 0 : pause[by]);
  }

  #send(input: Input, value: string): void {
    this.#run(async () => {
      const fault = await this.#post('api/inputs', { revision: this.state?.revision ?? '', name: input.name, value });
      if (this.sent[input.name] !== value) return; // another value is under way by now
      delete this.sent[input.name];
      if (fault && !fault.state) {
        const text = fault.diagnostics.map((d) => d.text).join(' ') || fault.text;
        this.trouble[input.name] = { text, fault, value };
        this.spoken = text;
      }
    });
  }

  undo(): void {
    this.#run(async () => this.#tell(await this.#post('api/undo', {})));
  }

  redo(): void {
    this.#run(async () => this.#tell(await this.#post('api/redo', {})));
  }

  remedy(id: string): void {
    this.#run(async () => this.#tell(await this.#post('api/remedy', { revision: this.state?.revision ?? '', id })));
  }

  /** Writes a reading down; resolves to what was wrong with it, or "". */
  record(of: string, what: string, value: string): Promise<string> {
    return new Promise((resolve) => {
      this.#run(async () => {
        const fault = await this.#post('api/record', { of, what, value });
        resolve(fault ? fault.diagnostics.map((d) => d.text).join(' ') || fault.text : '');
      });
    });
  }

  #tell(fault: Fault | null): void {
    if (fault) this.message = this.spoken = fault.text;
  }

  /** Does one thing after the other, so that each knows the revision before it. */
  #run(work: () => Promise<void>): void {
    this.busy++;
    this.spoken = this.say('app.replanning');
    this.#queue = this.#queue.then(async () => {
      try {
        await work();
      } catch {
        this.lost = true;
        this.sent = {};
      }
      if (--this.busy === 0 && this.spoken === this.say('app.replanning')) {
        const found = this.state?.tally.filter((t) => t.count > 0 && t.sign !== 'right').map((t) => t.word) ?? [];
        this.spoken = [this.say('app.replanned'), ...found].join(' ');
      }
    });
  }

  async #post(path: string, body: object): Promise<Fault | null> {
    const answer = await fetch(path, { method: 'POST', headers: { 'Content-Type': 'application/json' }, body: JSON.stringify(body) });
    this.lost = false;
    if (answer.ok) {
      this.message = '';
      this.#show((await answer.json()) as State);
      return null;
    }
    const fault = (await answer.json()) as Fault;
    if (fault.state) {
      this.#show(fault.state);
      this.message = this.spoken = fault.text;
      this.sent = {};
    }
    return fault;
  }

  choose(mark: string): void {
    this.chosen = this.chosen === mark ? '' : mark;
  }
}

export const desk = new Desk();
export const say = desk.say;
