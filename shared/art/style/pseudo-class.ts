import type { Nth, PseudoClassSelector, SelectorList } from 'css-tree';
import type { SvgElement } from '../xml/tree';
import { type CompiledSelector, matches, type Steps, type Test, UnknownSelector } from './match';

/** Compiles the selectors in brackets; selector.ts's, handed in because each needs the other. */
type Compile = (list: SelectorList) => CompiledSelector[];

const classWeight = 1000;

/** True of nothing on paper: there is no pointer, no focus and no history. */
const never = /^(hover|focus|focus-within|focus-visible|active|visited|target|checked|disabled|enabled)$/;

/** The test and weight of a pseudo-class. Throws UnknownSelector for what is not CSS's or not supported. */
export function pseudoClass(node: PseudoClassSelector, compile: Compile): { test: Test; weight: number } {
    const name = node.name.toLowerCase();
    const argument = node.children?.first;
    if (argument?.type === 'SelectorList') return ofList(name, argument, compile);
    if (argument?.type === 'Nth') return { test: ofNth(name, argument, compile), weight: classWeight };
    return { test: compileStructural(name), weight: classWeight };
}

function compileStructural(name: string): Test {
    if (never.test(name)) return () => false;
    switch (name) {
        case 'root':
            return ({ parent }) => parent === undefined;
        case 'first-child':
            return ({ index }) => index === 0;
        case 'last-child':
            return (element) => fromEnd(element) === 0;
        case 'only-child':
            return (element) => element.index === 0 && fromEnd(element) === 0;
        case 'first-of-type':
            return (element, steps) => alike(element, -1, steps) === 0;
        case 'last-of-type':
            return (element, steps) => alike(element, 1, steps) === 0;
        case 'only-of-type':
            return (element, steps) => alike(element, -1, steps) === 0 && alike(element, 1, steps) === 0;
        case 'empty':
            return ({ children, text }) => children.length === 0 && text === '';
        case 'link':
        case 'any-link':
            return ({ name: own, attributes }) => own === 'a' && attributes.href !== undefined;
        default:
            throw new UnknownSelector();
    }
}

function ofList(name: string, list: SelectorList, compile: Compile): { test: Test; weight: number } {
    const selectors = compile(list);
    const any = (element: SvgElement, steps: Steps) => selectors.some((selector) => matches(selector, element, steps));
    const weight = Math.max(0, ...selectors.map(({ specificity }) => specificity));
    switch (name) {
        case 'not':
            // When the steps are used up nothing matches, this included.
            return { test: (element, steps) => !any(element, steps) && steps.left > 0, weight };
        case 'is':
        case 'matches':
            return { test: any, weight };
        case 'where':
            return { test: any, weight: 0 };
        default:
            throw new UnknownSelector();
    }
}

function ofNth(name: string, { nth, selector }: Nth, compile: Compile): Test {
    let a = 0;
    let b = 0;
    if (nth.type === 'AnPlusB') {
        a = Number(nth.a ?? 0);
        b = Number(nth.b ?? 0);
    } else {
        a = 2;
        b = nth.name.toLowerCase() === 'odd' ? 1 : 0;
    }
    if (!Number.isFinite(a + b)) throw new UnknownSelector();
    const among: CompiledSelector[] | undefined = selector == null ? undefined : compile(selector);
    const fits = (index: number) => (a === 0 ? index === b : (index - b) % a === 0 && (index - b) / a >= 0);
    switch (name) {
        case 'nth-child':
            return (element, steps) => fits(1 + (among === undefined ? element.index : count(element, -1, among, steps)));
        case 'nth-last-child':
            return (element, steps) => fits(1 + (among === undefined ? fromEnd(element) : count(element, 1, among, steps)));
        case 'nth-of-type':
            return (element, steps) => fits(1 + alike(element, -1, steps));
        case 'nth-last-of-type':
            return (element, steps) => fits(1 + alike(element, 1, steps));
        default:
            throw new UnknownSelector();
    }
}

function fromEnd({ parent, index }: SvgElement): number {
    return parent === undefined ? 0 : parent.children.length - 1 - index;
}

/** How many siblings of the same name come before (-1) or after (1). */
function alike(element: SvgElement, direction: -1 | 1, steps: Steps): number {
    return countSiblings(element, direction, steps, ({ name }) => name === element.name);
}

/** How many such siblings match; NaN, which fits nothing, if the element itself does not. */
function count(element: SvgElement, direction: -1 | 1, among: readonly CompiledSelector[], steps: Steps): number {
    const fits = (candidate: SvgElement) => among.some((selector) => matches(selector, candidate, steps));
    return fits(element) ? countSiblings(element, direction, steps, fits) : Number.NaN;
}

function countSiblings(element: SvgElement, direction: -1 | 1, steps: Steps, fits: (sibling: SvgElement) => boolean): number {
    const siblings = element.parent?.children ?? [];
    let found = 0;
    for (let i = element.index + direction; i >= 0 && i < siblings.length && steps.left > 0; i += direction) {
        steps.left--;
        if (fits(siblings[i]!)) found++;
    }
    return found;
}
