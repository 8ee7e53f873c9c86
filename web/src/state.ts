// Generated from the Go package internal/surface/screen. Do not edit.

export type Sign = 'stop' | 'check' | 'note' | 'right' | 'idle';

export interface Remedy {
  id: string;
  text: string;
  applies: boolean;
}

export interface Diagnostic {
  sign: Sign;
  word: string;
  code: string;
  text: string;
  where: string;
  remedies: Remedy[];
}

export interface Fact {
  label: string;
  value: string;
}

export interface Piece {
  name: string;
  about: string;
  shop: string;
  units: string;
  overall: Fact[];
}

export type Kind = 'length' | 'count' | 'choice' | 'yes' | 'other';

export interface Stop {
  value: string;
  shown: string;
}

export interface Input {
  name: string;
  label: string;
  help: string;
  kind: Kind;
  value: string;
  shown: string;
  unit: string;
  limits: string;
  stops: Stop[];
  at: number;
  choices: Stop[];
  origin: string;
}

export interface Tally {
  sign: Sign;
  count: number;
  word: string;
}

export interface Finding {
  id: string;
  check: string;
  sign: Sign;
  word: string;
  status: string;
  severity: string;
  text: string;
  address: string;
  marks: string[];
  near: string[];
  page: string;
  figures: string;
  source: string;
  remedies: Remedy[];
}

export interface Column {
  heading: string;
  number: boolean;
}

export interface Heading {
  at: number;
  title: string;
}

export interface Table {
  title: string;
  columns: Column[];
  rows: string[][];
  groups: Heading[];
}

export interface Stage {
  id: string;
  title: string;
  parts: Table;
  blanks: Table;
}

export interface Tables {
  stages: Stage[];
  signs: string;
  buying: Table;
  tools: Table;
  joints: Table;
  held: Table;
  stowed: Table;
  seasons: Table;
  second: Table;
}

export interface Term {
  word: string;
  figure: string;
  minus: boolean;
  count: number;
}

export interface Sum {
  title: string;
  terms: Term[];
  total: string;
  alike: string[];
}

export interface Diagram {
  id: string;
  label: string;
  count: number;
  svg: string;
  caption: string;
  bound: string;
  marks: string[];
}

export interface Part {
  mark: string;
  name: string;
  quantity: number;
  members: string[];
  material: string;
  stage: string;
  length: string;
  width: string;
  thickness: string;
  basis: string;
  svg: string;
  caption: string;
  cuts: Table;
}

export interface Object {
  address: string;
  mark: string;
  name: string;
  pull: number;
}

export interface Setting {
  word: string;
  figure: string;
  passes: string[];
}

export interface Placement {
  n: number;
  marks: string[];
  pieces: number;
  settings: Setting[];
  offer: string;
  notes: string[];
  sums: Sum[];
}

export interface Setup {
  n: number;
  id: string;
  title: string;
  machine: string;
  speed: string;
  settings: Setting[];
  placements: Placement[];
  testPiece: string;
  device: string;
  shared: string;
  cautions: string[];
  sums: Sum[];
  svg: string;
  above: string;
  caption: string;
}

export interface Step {
  n: number;
  id: string;
  chapter: string;
  text: string;
  more: string[];
  cautions: string[];
  setups: string[];
  measures: string[];
  wait: string;
  hands: string;
  marks: string[];
}

export interface Reading {
  of: string;
  what: string;
  word: string;
  planned: string;
  found: string;
}

export interface Measure {
  address: string;
  label: string;
  marks: string[];
  readings: Reading[];
}

export interface Views {
  isometric: string;
}

export interface State {
  revision: string;
  file: string;
  words: Record<Word, string>;
  stale: boolean;
  diagnostics: Diagnostic[];
  undo: string;
  redo: string;
  piece: Piece;
  inputs: Input[];
  tally: Tally[];
  findings: Finding[];
  tables: Tables;
  cost: Fact[];
  rows: Sum[];
  diagrams: Diagram[];
  parts: Part[];
  objects: Object[];
  setups: Setup[];
  steps: Step[];
  measures: Measure[];
  views: Views;
  unplaced: string[];
}

export interface Fault {
  text: string;
  diagnostics: Diagnostic[];
  state: State | null;
}

/** The pages' own labels. */
export type Word =
  | 'app.alike'
  | 'app.all-cards'
  | 'app.all-done'
  | 'app.all-known'
  | 'app.apart'
  | 'app.apply'
  | 'app.aside'
  | 'app.at-machine'
  | 'app.back'
  | 'app.back-again'
  | 'app.booklet'
  | 'app.booklet-about'
  | 'app.build'
  | 'app.build-lead'
  | 'app.buying'
  | 'app.card'
  | 'app.caution'
  | 'app.change'
  | 'app.check-sum'
  | 'app.choose-part'
  | 'app.clear'
  | 'app.clear-sure'
  | 'app.clear-ticks'
  | 'app.close'
  | 'app.cost'
  | 'app.cut'
  | 'app.cut-lead'
  | 'app.device'
  | 'app.document'
  | 'app.done'
  | 'app.done-count'
  | 'app.elsewhere'
  | 'app.figures-ticked'
  | 'app.files'
  | 'app.files-about'
  | 'app.findings'
  | 'app.found'
  | 'app.hands'
  | 'app.holds'
  | 'app.holds-lead'
  | 'app.idle'
  | 'app.in-cards'
  | 'app.in-diagrams'
  | 'app.in-list'
  | 'app.in-steps'
  | 'app.keep'
  | 'app.larger'
  | 'app.leave-machine'
  | 'app.less'
  | 'app.less-of'
  | 'app.licences'
  | 'app.loading'
  | 'app.long'
  | 'app.look'
  | 'app.look-day'
  | 'app.look-evening'
  | 'app.look-sun'
  | 'app.lost'
  | 'app.made-from'
  | 'app.made-in'
  | 'app.marks'
  | 'app.measure'
  | 'app.members'
  | 'app.more'
  | 'app.more-of'
  | 'app.no-rows'
  | 'app.no-script'
  | 'app.no-view'
  | 'app.none-found'
  | 'app.not-checked'
  | 'app.nothing-chosen'
  | 'app.offer'
  | 'app.over'
  | 'app.over-lead'
  | 'app.overall'
  | 'app.pages'
  | 'app.paper-a4'
  | 'app.paper-letter'
  | 'app.part'
  | 'app.passed'
  | 'app.passes'
  | 'app.paths'
  | 'app.piece-one'
  | 'app.pieces'
  | 'app.planned'
  | 'app.reading-taken'
  | 'app.readings'
  | 'app.redo'
  | 'app.redo-what'
  | 'app.replanned'
  | 'app.replanning'
  | 'app.saved'
  | 'app.seasons'
  | 'app.see'
  | 'app.set'
  | 'app.set-lead'
  | 'app.skip'
  | 'app.source'
  | 'app.stage'
  | 'app.staged'
  | 'app.stale'
  | 'app.stale-document'
  | 'app.stands-in'
  | 'app.step'
  | 'app.step-done'
  | 'app.step-of'
  | 'app.stop-machine'
  | 'app.sums'
  | 'app.take-reading'
  | 'app.test-piece'
  | 'app.thick'
  | 'app.timber'
  | 'app.timber-lead'
  | 'app.times'
  | 'app.title'
  | 'app.undo'
  | 'app.undo-what'
  | 'app.unknown'
  | 'app.unplaced'
  | 'app.view'
  | 'app.view-above'
  | 'app.view-corner'
  | 'app.view-farther'
  | 'app.view-front'
  | 'app.view-nearer'
  | 'app.view-side'
  | 'app.waits-for'
  | 'app.wide';
