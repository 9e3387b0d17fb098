import { phrase } from '../../recipe/phrase';
import { limits } from '../limits';
import type { Problems } from '../problems';
import type { SvgElement, SvgTree } from '../xml/tree';
import { matches, type Steps } from './match';
import { type Declaration, readSheet, readStyleAttribute, type StyleRule } from './sheet';

const none: readonly Declaration[] = [];

/** Which style sheet and `style` attribute values hold for an element; its presentation attributes lose against all of them. */
export class Cascade {
    private readonly byKey = new Map<string, StyleRule[]>();
    private readonly attributes = new Map<string, readonly Declaration[]>();
    private readonly steps: Steps = { left: limits.matching };
    private exhausted = false;

    constructor(
        tree: SvgTree,
        private readonly problems: Problems,
    ) {
        const rules: StyleRule[] = [];
        let size = 0;
        for (const element of tree.all) {
            if (element.name !== 'style' || element.text.trim() === '' || !meantForScreen(element)) continue;
            size += element.text.length;
            if (size > limits.sheet) {
                problems.add(
                    'too-large',
                    'style',
                    phrase`Only ${limits.sheet} characters of style sheets are read.`,
                    element.offset,
                );
                break;
            }
            readSheet(element.text, rules, problems, element.offset);
        }
        for (const rule of rules) {
            const same = this.byKey.get(rule.selector.key);
            if (same === undefined) this.byKey.set(rule.selector.key, [rule]);
            else same.push(rule);
        }
    }

    /** Properties and their values, the winning ones last: later entries of the same property override earlier ones. */
    declarations(element: SvgElement): readonly Declaration[] {
        const matched = this.matched(element);
        const written = element.attributes.style;
        const own = written === undefined ? none : this.attribute(written, element.offset);
        if (matched.length === 0 && own.length === 0) return none;
        matched.sort((a, b) => a.selector.specificity - b.selector.specificity || a.order - b.order);
        const all = [...matched.flatMap(({ declarations }) => declarations), ...own];
        return all.some(({ important }) => important)
            ? [...all.filter(({ important }) => !important), ...all.filter(({ important }) => important)]
            : all;
    }

    private matched(element: SvgElement): StyleRule[] {
        const found: StyleRule[] = [];
        if (this.byKey.size === 0) return found;
        this.collect('*', element, found);
        this.collect(element.name, element, found);
        const { id, class: classes } = element.attributes;
        if (id !== undefined) this.collect(`#${id}`, element, found);
        if (classes !== undefined) {
            for (const word of new Set(classes.split(/\s+/))) this.collect(`.${word}`, element, found);
        }
        if (this.steps.left <= 0 && !this.exhausted) {
            this.exhausted = true;
            this.problems.add(
                'too-large',
                'style',
                phrase`Matching the style sheet takes too long; from here on it is left out.`,
                element.offset,
            );
        }
        return found;
    }

    private collect(key: string, element: SvgElement, found: StyleRule[]): void {
        const rules = this.byKey.get(key);
        if (rules === undefined) return;
        for (const rule of rules) if (matches(rule.selector, element, this.steps)) found.push(rule);
    }

    private attribute(text: string, offset: number): readonly Declaration[] {
        const known = this.attributes.get(text);
        if (known !== undefined) return known;
        const read = readStyleAttribute(text, () =>
            this.problems.add(
                'unreadable',
                'style',
                phrase`Some of a style attribute could not be read and is left out.`,
                offset,
            ),
        );
        this.attributes.set(text, read);
        return read;
    }
}

function meantForScreen({ attributes: { media, type } }: SvgElement): boolean {
    if (type !== undefined && type !== '' && type.trim().toLowerCase() !== 'text/css') return false;
    return media === undefined || /^\s*$|\b(all|screen)\b/.test(media);
}
