import { keep, kept } from './keep';
import type { Word } from './state';

export type Look = 'day' | 'evening' | 'sun';

export const looks: { look: Look; word: Word }[] = [
  { look: 'day', word: 'app.look-day' },
  { look: 'evening', word: 'app.look-evening' },
  { look: 'sun', word: 'app.look-sun' },
];

const key = 'scantling.look';

function first(): Look {
  const was = kept(key);
  if (was === 'day' || was === 'evening' || was === 'sun') return was;
  if (matchMedia('(prefers-contrast: more)').matches) return 'sun';
  return matchMedia('(prefers-color-scheme: dark)').matches ? 'evening' : 'day';
}

class Looks {
  now = $state<Look>(first());

  set(look: Look): void {
    this.now = look;
    keep(key, look);
    this.apply();
  }

  apply(): void {
    document.documentElement.dataset.look = this.now;
  }
}

export const look = new Looks();
