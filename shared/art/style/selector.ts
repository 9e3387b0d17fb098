import type { CssNode, Selector, SelectorList } from 'css-tree';
import type { SvgElement } from '../xml/tree';
import { pseudoClass } from './pseudo-class';

/** Whether one element, by itself, fits. */
export type Test = (element: SvgElement, steps: Steps) => boolean;

/** Counts what matching costs; once it is used up, nothing matches any more. */
export interface Steps {
    left: number;
}

/** A selector read from right to left: what the element must be, then how to reach the next one. */
export interface CompiledSelector {
    readonly compounds: readonly Compound[];
    /** Ids, then classes, attributes and pseudo-classes, then names, as one number (CSS Selectors 4, section 17). */
    readonly specificity: number;
    /** What the element itself must have: `#id`, `.class` or a name, by which rules are looked up; `*` if nothing is sure. */
    readonly key: string;
}

interface Compound {
    readonly tests: readonly Test[];
    /** How it is joined to the compound on its left. */
    readonly combinator: string | undefined;
}

const idWeight = 1_000_000;
const classWeight = 1000;

/** Thrown for a selector that is not understood, and caught where a rule is read. */
export class UnknownSelector extends Error {}

export function compileList(list: SelectorList): CompiledSelector[] {
    return list.children.toArray().map((selector) => compile(selector as Selector));
}

function compile(selector: Selector): CompiledSelector {
    const compounds: Compound[] = [];
    let tests: Test[] = [];
    let specificity = 0;
    let key = '*';
    let combinator: string | undefined;
    for (const node of selector.children) {
        if (node.type === 'Combinator') {
            compounds.push({ tests, combinator });
            combinator = node.name;
            tests = [];
            key = '*';
            continue;
        }
        const simple = compileSimple(node);
        specificity += simple.weight;
        tests.push(simple.test);
        // An id finds the fewest candidates, a name the most.
        if (simple.key !== undefined && (key === '*' || simple.key.startsWith('#') || (simple.key.startsWith('.') && !key.startsWith('#')))) {
            key = simple.key;
        }
    }
    compounds.push({ tests, combinator });
    return { compounds: compounds.reverse(), specificity, key };
}

function compileSimple(node: CssNode): { test: Test; weight: number; key?: string } {
    switch (node.type) {
        case 'TypeSelector': {
            // A namespace prefix says nothing here: only SVG's own elements are left.
            const name = node.name.slice(node.name.lastIndexOf('|') + 1);
            if (name === '*') return { test: () => true, weight: 0 };
            return { test: (element) => element.name === name, weight: 1, key: name };
        }
        case 'IdSelector':
            return { test: (element) => element.attributes.id === node.name, weight: idWeight, key: `#${node.name}` };
        case 'ClassSelector':
            return { test: (element) => hasWord(element.attributes.class, node.name), weight: classWeight, key: `.${node.name}` };
        case 'AttributeSelector': {
            const name = node.name.name.slice(node.name.name.lastIndexOf('|') + 1);
            const wanted = node.value === null ? '' : node.value.type === 'String' ? node.value.value : node.value.name;
            const fold = node.flags?.toLowerCase() === 'i';
            return { test: attributeTest(name, node.matcher, wanted, fold), weight: classWeight };
        }
        case 'PseudoClassSelector':
            return pseudoClass(node);
        case 'PseudoElementSelector':
            return { test: () => false, weight: 1 };
        default:
            throw new UnknownSelector();
    }
}

function attributeTest(name: string, matcher: string | null, wanted: string, fold: boolean): Test {
    const want = fold ? wanted.toLowerCase() : wanted;
    return ({ attributes }) => {
        const written = attributes[name];
        if (written === undefined) return false;
        const value = fold ? written.toLowerCase() : written;
        switch (matcher) {
            case null:
                return true;
            case '=':
                return value === want;
            case '~=':
                return hasWord(value, want);
            case '|=':
                return value === want || value.startsWith(`${want}-`);
            case '^=':
                return want !== '' && value.startsWith(want);
            case '$=':
                return want !== '' && value.endsWith(want);
            case '*=':
                return want !== '' && value.includes(want);
            default:
                return false;
        }
    };
}

function hasWord(list: string | undefined, word: string): boolean {
    return list !== undefined && word !== '' && (list === word || (list.includes(word) && list.split(/\s+/).includes(word)));
}

export function matches({ compounds }: CompiledSelector, element: SvgElement, steps: Steps): boolean {
    return matchesFrom(compounds, 0, element, steps);
}

function matchesFrom(compounds: readonly Compound[], at: number, element: SvgElement, steps: Steps): boolean {
    if (steps.left-- <= 0) return false;
    const { tests } = compounds[at]!;
    for (const test of tests) if (!test(element, steps)) return false;
    const next = at + 1;
    if (next === compounds.length) return true;
    switch (compounds[at]!.combinator) {
        case '>':
            return element.parent !== undefined && matchesFrom(compounds, next, element.parent, steps);
        case '+': {
            const before = element.parent?.children[element.index - 1];
            return before !== undefined && matchesFrom(compounds, next, before, steps);
        }
        case '~':
            for (let i = element.index - 1; i >= 0; i--) {
                if (matchesFrom(compounds, next, element.parent!.children[i]!, steps)) return true;
            }
            return false;
        default:
            for (let outer = element.parent; outer !== undefined; outer = outer.parent) {
                if (matchesFrom(compounds, next, outer, steps)) return true;
            }
            return false;
    }
}
