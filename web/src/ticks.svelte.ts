import { keep, kept } from './keep';

/** Ticks are kept on this device, by piece and by what was ticked. */
const prefix = 'scantling.ticks.';

class Ticks {
  #key = '';
  done = $state<Record<string, boolean>>({});

  open(file: string): void {
    if (this.#key === prefix + file) return;
    this.#key = prefix + file;
    try {
      this.done = JSON.parse(kept(this.#key) ?? '{}') as Record<string, boolean>;
    } catch {
      this.done = {};
    }
  }

  set(id: string, on: boolean): void {
    if (on) this.done[id] = true;
    else delete this.done[id];
    this.#keep();
  }

  clear(): void {
    this.done = {};
    this.#keep();
  }

  #keep(): void {
    keep(this.#key, JSON.stringify(this.done));
  }
}

export const ticks = new Ticks();
