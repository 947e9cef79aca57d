import { type History, recorded, redone, startHistory, undone } from './history.js';
import { type Kept } from './keeping.js';
import { type Card, emptySheet, type Sheet } from './sheet.js';
import { startView, type View, viewWithin } from './view.js';

/** Something the page has to say. */
export interface Message {
  readonly id: number;
  readonly kind: 'problem' | 'note';
  /** What it is about: what is said of it next takes its place. */
  readonly topic: string;
  /** One or more lines. */
  readonly text: string;
}

/** What the page holds: the document with its history, what is looked at, and what was found out about it. */
export interface Store {
  readonly history: History<Sheet>;
  readonly view: View;
  readonly messages: readonly Message[];
  sheet(): Sheet;
  card(): Card;
  /**
   * Changes the document; `gesture` joins changes that follow each other closely into one step of undo. What changes nothing is
   * no step.
   */
  change(what: string, next: (sheet: Sheet) => Sheet, gesture?: string): void;
  look(next: Partial<View>): void;
  undo(): void;
  redo(): void;
  /** Says something in the place of what was said of the same topic before; no text takes that away. */
  say(kind: Message['kind'], topic: string, text: string): void;
  dismiss(id: number): void;
  /** Tells of every change, after it. */
  watch(listener: () => void): void;
}

const mostMessages = 6;

/** @param kept what an earlier visit left */
export function createStore(kept?: Kept): Store {
  let history = kept?.history ?? startHistory(emptySheet());
  let view = viewWithin(history.now, kept?.view ?? startView(history.now));
  let messages: readonly Message[] = [];
  let saidBefore = 0;
  const listeners: (() => void)[] = [];
  /** What was looked at when a document was left. */
  const viewOf = new WeakMap<Sheet, View>();

  function tell(): void {
    for (const listener of listeners) listener();
  }
  function turnTo(next: History<Sheet>): void {
    viewOf.set(history.now, view);
    history = next;
    view = viewWithin(history.now, view, viewOf.get(history.now));
    tell();
  }
  const sheet = () => history.now;

  return {
    get history() {
      return history;
    },
    get view() {
      return view;
    },
    get messages() {
      return messages;
    },
    sheet,
    card: () => sheet().cards.find(({ id }) => id === view.card) ?? sheet().cards[0],
    change: (what, next, gesture) => {
      const after = next(sheet());
      const isSame = JSON.stringify(after) === JSON.stringify(sheet());
      turnTo(isSame ? history : recorded(history, after, what, Date.now(), gesture));
    },
    look: (next) => {
      view = viewWithin(sheet(), { ...view, ...next });
      tell();
    },
    undo: () => turnTo(undone(history)),
    redo: () => turnTo(redone(history)),
    say: (kind, topic, text) => {
      const others = messages.filter((one) => one.kind !== kind || one.topic !== topic);
      if (text === '' && others.length === messages.length) return;
      const said = text === '' ? [] : [{ id: ++saidBefore, kind, topic, text }];
      messages = [...others, ...said].slice(-mostMessages);
      tell();
    },
    dismiss: (id) => {
      messages = messages.filter((message) => message.id !== id);
      tell();
    },
    watch: (listener) => void listeners.push(listener),
  };
}
