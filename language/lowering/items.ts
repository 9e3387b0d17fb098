import type { AstNode } from 'langium';
import type { Quantity } from '../../shared/quantity/quantity';
import type { Where, Written } from '../../shared/quantity/where';
import { mostCopies } from '../../shared/recipe/most-copies';
import type { Extent } from '../../shared/recipe/stock';
import { isCount, isExtent, isFigure, isTone, isTrait } from '../generated/ast';
import { type ChoiceOf, type KeyOf, propertyOf } from '../vocabulary/lookup';
import type { NodeType } from '../vocabulary/property';
import { whereOf } from './places';
import { extentOf, quantityOf } from './quantity';

/** The lines of a block by key. Of several the first that can be used counts; the others are reported as doubles. */
export class Items<Block extends NodeType> {
    private readonly items: readonly AstNode[];

    /** @param block a block of the tree, or lines that count as those of one; which keys it can be asked for follows from its type */
    constructor(block: { readonly $type: Block; readonly items?: readonly AstNode[] }) {
        this.items = block.items ?? [];
    }

    /** The first figure of that key that can be used. */
    figure(key: KeyOf<Block, 'figure'>): Quantity | undefined {
        return this.first((item) => (isFigure(item) && item.key === key ? quantityOf(item.value) : undefined));
    }

    /** The whole statement of that figure, for a fix that takes it out. */
    line(key: KeyOf<Block, 'figure'>): Where | undefined {
        return this.first((item) =>
            isFigure(item) && item.key === key && quantityOf(item.value) !== undefined ? whereOf(item) : undefined,
        );
    }

    count(key: KeyOf<Block, 'count'>): Written<number> | undefined {
        return this.first((item) => {
            if (!isCount(item) || item.key !== key) return undefined;
            return isCountable(item.value, item.$container.$type, key) ? { value: item.value, where: whereOf(item) } : undefined;
        });
    }

    size(key: KeyOf<Block, 'size'>): Extent | undefined {
        return this.first((item) => (isExtent(item) && item.key === key ? extentOf(item.size) : undefined));
    }

    /** The first line of which something can be made. A line that is being typed does not hide a whole one. */
    first<T>(read: (item: AstNode) => T | undefined): T | undefined {
        for (const item of this.items) {
            const found = read(item);
            if (found !== undefined) return found;
        }
        return undefined;
    }

    word(key: KeyOf<Block, 'word' | 'text'>): string | undefined {
        return this.words(key)[0];
    }

    /** All words of that key, each once. */
    words(key: KeyOf<Block, 'word' | 'text'>): string[] {
        const words = this.items.flatMap((item) =>
            isTrait(item) && item.key === key && item.value !== undefined ? [item.value] : [],
        );
        return [...new Set(words)];
    }

    /** The first line of that key that says one of the words among which it chooses. */
    choice<Key extends KeyOf<Block, 'word'>>(key: Key): Written<ChoiceOf<Block, Key>> | undefined {
        return this.first((item) => {
            if (!isTrait(item) || item.key !== key) return undefined;
            const choices = propertyOf(item.$container.$type, key)?.choices ?? [];
            const word = choices.find((choice) => choice === item.value);
            return word === undefined ? undefined : { value: word as ChoiceOf<Block, Key>, where: whereOf(item) };
        });
    }

    tone(key: KeyOf<Block, 'colour'>): string | undefined {
        for (const item of this.items) {
            if (isTone(item) && item.key === key && isColour(item.value)) return item.value;
        }
        return undefined;
    }
}

/** Whether a bare number is one that the property can count with. */
export function isCountable(value: number | undefined, block: string, key: string): value is number {
    const [low, high] = propertyOf(block, key)?.measures[0]?.bounds ?? [0, 1e6];
    return value !== undefined && Number.isInteger(value) && value >= low && value <= high;
}

/** Whether the two numbers of a grid are ones that can be counted with. */
export function isGrid({ columns, rows }: { columns?: number; rows?: number }): boolean {
    const counts = (value: number | undefined): value is number => value !== undefined && Number.isInteger(value) && value >= 1;
    return counts(columns) && counts(rows) && columns * rows <= mostCopies;
}

export function isColour(text: string | undefined): text is string {
    return text !== undefined && /^#(?:[0-9a-f]{3}|[0-9a-f]{6})$/i.test(text);
}
