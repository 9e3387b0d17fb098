import type { CssNode, Selector, SelectorList } from 'css-tree';
import { type CompiledSelector, type Compound, type Test, UnknownSelector } from './match';
import { pseudoClass } from './pseudo-class';

const idWeight = 1_000_000;
const classWeight = 1000;

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
        if (
            simple.key !== undefined &&
            (key === '*' || simple.key.startsWith('#') || (simple.key.startsWith('.') && !key.startsWith('#')))
        ) {
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
            return pseudoClass(node, compileList);
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
