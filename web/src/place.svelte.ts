import type { Word } from './state';

export type Page = 'holds' | 'timber' | 'cut' | 'set' | 'build' | 'over';

/** The maker's questions, in the order in which they come up. */
export const pages: { page: Page; word: Word; lead: Word }[] = [
  { page: 'holds', word: 'app.holds', lead: 'app.holds-lead' },
  { page: 'timber', word: 'app.timber', lead: 'app.timber-lead' },
  { page: 'cut', word: 'app.cut', lead: 'app.cut-lead' },
  { page: 'set', word: 'app.set', lead: 'app.set-lead' },
  { page: 'build', word: 'app.build', lead: 'app.build-lead' },
  { page: 'over', word: 'app.over', lead: 'app.over-lead' },
];

/** Where the maker is: a page and a place on it, or a step at the machine. */
class Place {
  page = $state<Page>('holds');
  step = $state('');
  atMachine = $state(false);

  read(): void {
    const [page = '', rest = ''] = decodeURIComponent(location.hash.slice(1)).split('/', 2);
    this.atMachine = page === 'machine';
    this.step = this.atMachine ? rest : '';
    const known = pages.find((p) => p.page === page);
    if (known) this.page = known.page;
    if (this.atMachine) this.page = 'build';
    if (rest && !this.atMachine) requestAnimationFrame(() => document.getElementById(rest)?.scrollIntoView({ block: 'start' }));
    else scrollTo(0, 0);
  }
}

export const place = new Place();

/** An id of the plan as an id of the page: "board 1" may not stand there. */
export function slug(id: string): string {
  return id.replace(/[^A-Za-z0-9.[\]]+/g, '-');
}

/** The link to a page, or to a card, step or part on it. */
export function to(page: Page | 'machine', id = ''): string {
  return '#' + page + (id ? '/' + encodeURIComponent(slug(id)) : '');
}
