import type { Word } from './state';

/** Puts figures that only the page knows into the places of a text. */
export function fill(text: string, figures: Record<string, string | number>): string {
  return text.replace(/\{(\w+)\}/g, (whole, name: string) => String(figures[name] ?? whole));
}

export type Say = (key: Word, figures?: Record<string, string | number>) => string;

/** One piece of a text: plain, or a fraction to be stacked. */
export type Run = { text: string } | { over: string; under: string };

/** Cuts a text at its fractions: "5 3/8 in" has one. */
export function runs(text: string): Run[] {
  const out: Run[] = [];
  let at = 0;
  for (const m of text.matchAll(/(?<![\d/.])(\d{1,3})\/(\d{1,3})(?![\d/])/g)) {
    if (m.index > at) out.push({ text: text.slice(at, m.index) });
    out.push({ over: m[1]!, under: m[2]! });
    at = m.index + m[0].length;
  }
  if (at < text.length) out.push({ text: text.slice(at) });
  return out;
}

/** Splits "12.7 mm" into figure and unit, so that the figure can be the hero. */
export function figureAndUnit(text: string): [string, string] {
  const m = /^(.*\d)\s+([a-z]+)$/.exec(text);
  return m ? [m[1]!, m[2]!] : [text, ''];
}
