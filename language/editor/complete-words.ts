import { AstUtils, GrammarAST } from 'langium';
import { type CompletionItem, CompletionItemKind, InsertTextFormat, type MarkupContent } from 'vscode-languageserver';
import { type Construct, constructs } from '../vocabulary/constructs';
import { endsEarlierForm } from '../vocabulary/editions';
import { propertiesOf } from '../vocabulary/lookup';
import { canSayNo } from '../vocabulary/no';
import type { Property } from '../vocabulary/property';
import type { Standing } from './open-blocks';

type Proposal = Partial<CompletionItem> & { readonly label: string };

/**
 * What a word of the grammar stands for where the cursor is: a whole statement, a line of a block, or only itself.
 * `written` are the keys of the block's other lines: undefined for one that is there and may stand only once.
 */
export function proposeWord(
    keyword: GrammarAST.Keyword,
    { blocks, heads, statement }: Standing,
    written: ReadonlySet<string>,
): Proposal | undefined {
    const word = keyword.value;
    const rule = AstUtils.getContainerOfType(keyword, GrammarAST.isParserRule)?.name ?? '';
    if (endsEarlierForm(rule, word)) return undefined; // read, no longer written
    if (!isBased(heads) && needsBase(word, blocks.at(-1) ?? '', statement)) return undefined;
    if (isFirstWord(keyword)) {
        const construct = constructs.find((each) => each.word === word && each.type === rule);
        if (construct !== undefined) return ofConstruct(construct);
        const block = blocks.at(-1) ?? '';
        if (propertiesOf(block).some(({ before }) => before === word)) return undefined; // read, no longer written
        const property = propertiesOf(block).find(({ words }) => words === word || words.startsWith(`${word} `));
        if (property !== undefined) return !property.many && written.has(property.key) ? undefined : ofProperty(property);
    }
    // What a step may be called comes after the words that it goes on with.
    return { label: word, kind: CompletionItemKind.Keyword, sortText: word === 'called' ? '02' : '01' };
}

/** Whether what is open is a recipe that is based on another. */
function isBased(heads: string): boolean {
    return /^recipe \S+(?: "[^"]*")? based on /.test(heads);
}

/** Words that point at what a base has. Without one a line can only say no, and only to what can be none. */
function needsBase(word: string, block: string, statement: string): boolean {
    if (statement === 'without') return !canSayNo(word);
    if (word === 'without') return !propertiesOf(block).some(({ key }) => canSayNo(key));
    return block === 'Recipe' && (word === 'after' || word === 'before');
}

function ofConstruct({ word, what, example, snippet }: Construct): Proposal {
    return {
        label: word,
        kind: CompletionItemKind.Keyword,
        detail: what,
        documentation: markdown(what, example),
        insertText: snippet,
        insertTextFormat: InsertTextFormat.Snippet,
        sortText: '6',
    };
}

function ofProperty(property: Property): Proposal {
    const { words, what, example } = property;
    return {
        label: words,
        kind: CompletionItemKind.Property,
        detail: what,
        documentation: markdown(what, example),
        insertText: snippetOf(property),
        insertTextFormat: InsertTextFormat.Snippet,
        sortText: '5',
    };
}

/** The example's value stands as a placeholder, so that its shape is seen and the number is the maker's own. */
function snippetOf({ words, takes, choices, example }: Property): string {
    if (choices.length > 0) return `${words} \${1|${choices.join(',')}|}`;
    const value = example.slice(words.length).trim();
    if (value === '') return words;
    if (takes === 'name') return `${words} $1`;
    return `${words} \${1:${value.replaceAll(/[\\$}]/g, '\\$&')}}`;
}

function markdown(what: string, example: string): MarkupContent {
    return { kind: 'markdown', value: `${what}\n\n\`\`\`kerfbook\n${example}\n\`\`\`` };
}

/** Whether a statement begins with this word: nothing stands before it in its rule. */
function isFirstWord(keyword: GrammarAST.Keyword): boolean {
    for (let node: GrammarAST.AbstractElement = keyword; ; ) {
        const holder = node.$container;
        if (GrammarAST.isGroup(holder) && holder.elements.indexOf(node) > 0 && !isAction(holder.elements[0])) return false;
        if (holder === undefined || !GrammarAST.isAbstractElement(holder)) return true;
        node = holder;
    }
}

function isAction(element: GrammarAST.AbstractElement | undefined): boolean {
    return GrammarAST.isAction(element);
}
