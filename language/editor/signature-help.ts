import type { LangiumDocument, Lexer } from 'langium';
import type { LangiumServices, SignatureHelpProvider } from 'langium/lsp';
import type { SignatureHelp, SignatureHelpOptions, SignatureHelpParams } from 'vscode-languageserver';
import { clauseOrderOf } from '../editing/line-clauses';
import { joiningWord } from '../vocabulary/joints';
import { allParts, propertiesOf } from '../vocabulary/lookup';
import type { NodeType, Property } from '../vocabulary/property';
import { isInComment, readFrom, standingAfter } from './open-blocks';

/** Lines that have several figures behind words of their own: the words in the order in which they are laid out. */
const forms: Partial<Record<NodeType, readonly string[]>> = {
    Burn: ['burn', ...clauseOrderOf('Burn')],
    CutTest: ['cut', ...clauseOrderOf('CutTest')],
    Repeat: ['repeat', 'x', 'every'],
    Setpoint: ['set', 'gives'],
    Curve: ['curve', 'gives'],
    SheetPrice: ['price', 'for'],
    FluidPrice: ['price', 'for'],
    ShopPrice: ['price', 'for', 'of'],
    Offcut: ['offcut', 'counted'],
};

/** While a line of several figures is typed: what it takes, and what the figure at the cursor is. All of it is the vocabulary's. */
export class KerfSignatureHelp implements SignatureHelpProvider {
    readonly signatureHelpOptions: SignatureHelpOptions = { triggerCharacters: [' '] };
    private readonly lexer: Lexer;

    constructor(services: LangiumServices) {
        this.lexer = services.parser.Lexer;
    }

    provideSignatureHelp(document: LangiumDocument, { position }: SignatureHelpParams): SignatureHelp | undefined {
        const text = document.textDocument.getText();
        const offset = document.textDocument.offsetAt(position);
        const from = readFrom(document, offset);
        if (isInComment(text, from, offset)) return undefined;
        const { blocks, statement, atStart } = standingAfter(text.slice(from, offset), this.lexer);
        if (atStart) return undefined;
        return helpFor(blocks.at(-1) ?? '', statement.replaceAll(/"[^"]*"?/g, '""').split(' '));
    }
}

function helpFor(block: string, words: readonly string[]): SignatureHelp | undefined {
    const grid = words.lastIndexOf('repeat');
    // A grid ends where the line goes on with something else.
    const isGrid = grid >= 0 && !words.slice(grid).some((word) => word === 'at' || word === 'turned');
    const line = propertiesOf(block).find((each) => each.words === words[0] && each.node !== undefined);
    const type = isGrid ? 'Repeat' : line?.node;
    const form = type === undefined ? undefined : forms[type];
    if (type === undefined || form === undefined) return undefined;
    const typed = (isGrid ? words.slice(grid) : words).map((word) => (word === '×' ? 'x' : word));
    const at = typed.findLastIndex((word) => form.includes(word));
    const parameters = form.map((word) => ({
        label: `${word} …`,
        documentation: { kind: 'markdown' as const, value: saidOf(type, word) },
    }));
    const label = parameters.map((each) => each.label).join(' ');
    const example = isGrid ? partOf('Repeat', 'every')?.example : line?.example;
    const what = isGrid ? joiningWord('Repeat', 'repeat') : line?.what;
    const documentation = { kind: 'markdown' as const, value: `${what}\n\n\`\`\`kerfbook\n${example}\n\`\`\`` };
    return {
        signatures: [{ label, documentation, parameters }],
        activeSignature: 0,
        activeParameter: Math.max(0, form.indexOf(typed[at] ?? '')),
    };
}

function saidOf(type: NodeType, word: string): string {
    return partOf(type, word)?.what ?? joiningWord(type, word) ?? '';
}

function partOf(type: NodeType, word: string): Property | undefined {
    const block = type === 'Curve' ? 'CurvePoint' : type;
    return allParts.find((part) => part.block === block && part.words === word);
}
