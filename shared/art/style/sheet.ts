import type { Atrule, Block, CssNode, List, Rule } from 'css-tree';
import parse from 'css-tree/parser';
import { type Message, phrase } from '../../recipe/phrase';
import type { Problems } from '../problems';
import { type CompiledSelector, UnknownSelector } from './match';
import { compileList } from './selector';

export interface Declaration {
    readonly property: string;
    readonly value: string;
    readonly important: boolean;
}

export interface StyleRule {
    readonly selector: CompiledSelector;
    readonly declarations: readonly Declaration[];
    /** Its place among all rules: of two that weigh the same, the later wins. */
    readonly order: number;
}

/** css-tree goes over the whole text for each error, so that a text of nothing else would take minutes. */
const mostErrors = 100;

/** Reads one `<style>` element's text and adds its rules to `rules`. */
export function readSheet(text: string, rules: StyleRule[], problems: Problems, offset: number): void {
    const parsed = parseSafely(text, 'stylesheet', (message) => problems.add('unreadable', 'style', message, offset));
    if (parsed?.type === 'StyleSheet') readRules(parsed.children, rules, problems, offset);
}

function readRules(nodes: List<CssNode>, rules: StyleRule[], problems: Problems, offset: number): void {
    for (const node of nodes) {
        if (node.type === 'Rule') readRule(node, rules, problems, offset);
        else if (node.type === 'Atrule') readAtRule(node, rules, problems, offset);
    }
}

function readRule({ prelude, block }: Rule, rules: StyleRule[], problems: Problems, offset: number): void {
    if (prelude.type !== 'SelectorList') {
        problems.add('unreadable', 'style', phrase`A rule of the style sheet has no readable selector and is left out.`, offset);
        return;
    }
    const declarations = declarationsOf(block, () =>
        problems.add(
            'unsupported',
            'style',
            phrase`Style rules inside one another are not supported; the inner ones are left out.`,
            offset,
        ),
    );
    try {
        for (const selector of compileList(prelude)) rules.push({ selector, declarations, order: rules.length });
    } catch (error) {
        if (!(error instanceof UnknownSelector)) throw error;
        problems.add(
            'unsupported',
            'style',
            phrase`A selector of the style sheet is not supported; its rule is left out.`,
            offset,
        );
    }
}

function readAtRule(node: Atrule, rules: StyleRule[], problems: Problems, offset: number): void {
    const name = node.name.toLowerCase();
    if (name === 'charset' || name === 'namespace' || name === 'keyframes' || name === 'font-face') return;
    if (name === 'import') {
        problems.add('refused', '@import', phrase`A style sheet in another file is not opened.`, offset);
    } else if (name === 'media' && node.block !== null) {
        const media = mediaOf(node);
        if (media === undefined) {
            problems.add(
                'unsupported',
                '@media',
                phrase`A condition of @media is not supported; its rules are left out.`,
                offset,
            );
        } else if (media) {
            readRules(node.block.children, rules, problems, offset);
        }
    } else {
        problems.add('unsupported', `@${name}`, phrase`@${name} in a style sheet is not supported and is left out.`, offset);
    }
}

/** Whether a screen is meant; undefined if the condition asks for more than a kind of medium. */
function mediaOf({ prelude }: Atrule): boolean | undefined {
    if (prelude?.type !== 'AtrulePrelude') return prelude === null ? true : undefined;
    const list = prelude.children.first;
    if (list?.type !== 'MediaQueryList') return list == null ? true : undefined;
    for (const query of list.children) {
        const { modifier, mediaType, condition } = query as CssNode & {
            modifier: unknown;
            mediaType?: string;
            condition?: unknown;
        };
        if (modifier != null || condition != null || mediaType === undefined) return undefined;
        if (mediaType === 'all' || mediaType === 'screen') return true;
    }
    return false;
}

/** A `style` attribute's declarations; `complain` is called once if some of it could not be read. */
export function readStyleAttribute(text: string, complain: () => void): readonly Declaration[] {
    const parsed = parseSafely(text, 'declarationList', complain);
    return parsed?.type === 'DeclarationList' ? declarationsOf(parsed, complain) : [];
}

function declarationsOf({ children }: Pick<Block, 'children'>, nested: () => void): Declaration[] {
    const declarations: Declaration[] = [];
    for (const node of children) {
        if (node.type === 'Rule' || node.type === 'Atrule') nested();
        if (node.type !== 'Declaration' || node.value.type !== 'Raw') continue;
        const property = node.property.startsWith('--') ? node.property : node.property.toLowerCase();
        declarations.push({ property, value: node.value.value.trim(), important: node.important === true });
    }
    return declarations;
}

class TooManyErrors extends Error {
    constructor(readonly offset: number) {
        super();
    }
}

function parseSafely(text: string, context: string, complain: (message: Message) => void): CssNode | undefined {
    let errors = 0;
    const onParseError = ({ offset }: { offset?: number }) => {
        if (errors++ === 0) complain(phrase`Some of the style sheet could not be read and is left out.`);
        if (errors > mostErrors) throw new TooManyErrors(offset ?? 0);
    };
    try {
        return parse(text, { context, parseValue: false, positions: false, onParseError });
    } catch (error) {
        if (error instanceof TooManyErrors && error.offset < text.length) {
            complain(phrase`The style sheet has too many errors: only its beginning is read.`);
            errors = 0;
            try {
                return parse(text.slice(0, error.offset), {
                    context,
                    parseValue: false,
                    positions: false,
                    onParseError: () => {},
                });
            } catch {
                return undefined;
            }
        }
        complain(phrase`The style sheet could not be read.`);
        return undefined;
    }
}
