import { isRecord } from '../read-place';
import { type AskedPage, keyOf, readAskedPage } from './asked-page';

export interface KeptPage {
    /** What the panel is called. Nothing runs in a page, so that this is all by which it is known again. */
    readonly title: string;
    readonly asked: AskedPage;
}

/** The part of the editor's memory that is needed here. */
export interface PageMemory {
    get(key: string): unknown;
    update(key: string, value: unknown): Thenable<void>;
}

const KEY = 'kerfbook.pages';

/** More than these nobody has open. */
const MAX_PAGES = 100;

/** Pages of the last session whose panels the editor may still bring back: it does so when one is first looked at. */
export class KeptPages {
    private waiting: readonly KeptPage[];

    constructor(private readonly memory: PageMemory) {
        const kept = memory.get(KEY);
        this.waiting = (Array.isArray(kept) ? kept : []).slice(0, MAX_PAGES).flatMap((each) => {
            const asked = isRecord(each) ? readAskedPage(each.asked) : undefined;
            return asked === undefined || typeof each.title !== 'string' ? [] : [{ title: each.title, asked }];
        });
    }

    /** What a panel that comes back was about. Of panels called alike each gets one. */
    take(title: string): AskedPage | undefined {
        const kept = this.waiting.find((each) => each.title === title);
        this.waiting = this.waiting.filter((each) => each !== kept);
        return kept?.asked;
    }

    /** @param titles of all panels that the editor has, looked at or not: what waits for none of them is forgotten */
    keep(open: readonly KeptPage[], titles: ReadonlySet<string>): void {
        const keys = new Set(open.map(({ asked }) => keyOf(asked)));
        this.waiting = this.waiting.filter(({ title, asked }) => titles.has(title) && !keys.has(keyOf(asked)));
        void this.memory.update(KEY, [...open, ...this.waiting].slice(0, MAX_PAGES));
    }
}
