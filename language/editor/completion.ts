import {
    type AstNode,
    type AstNodeDescription,
    type AstNodeDescriptionProvider,
    AstUtils,
    type FileSystemProvider,
    GrammarAST,
    type LangiumDocument,
    type MaybePromise,
    type ReferenceInfo,
} from 'langium';
import {
    type CompletionAcceptor,
    type CompletionContext,
    type CompletionProviderOptions,
    type CompletionValueItem,
    DefaultCompletionProvider,
    findNextFeatures,
    type NextFeature,
} from 'langium/lsp';
import {
    type CompletionItem,
    CompletionItemKind,
    type CompletionList,
    type CompletionParams,
    InsertTextFormat,
    type Position,
    type Range,
    type TextEdit,
} from 'vscode-languageserver';
import { TextDocument } from 'vscode-languageserver-textdocument';
import { currencyCodes, currencyName } from '../../shared/quantity/currency';
import { pickText } from '../../shared/recipe/pick-text';
import { isBuiltIn } from '../built-in';
import { Layout } from '../editing/layout';
import { isArtUse, isFile, isRecipe, isStep, isTrait } from '../generated/ast';
import { stockOutOfSight } from '../names/stock-out-of-sight';
import { resolvePath } from '../names/used-files';
import type { OutsideServices } from '../outside';
import { isMadeUp, wordType } from '../parsing/token';
import type { KerfServices } from '../services';
import { constructOf } from '../vocabulary/constructs';
import { propertyOf } from '../vocabulary/lookup';
import { proposePaths } from './complete-paths';
import { proposePicks } from './complete-picks';
import { proposeUnits } from './complete-units';
import { proposeWord } from './complete-words';
import { declaredAt } from './lazy-documentation';
import { isInComment, readFrom, type Standing, standingAfter } from './open-blocks';
import { summaryOf } from './summary';
import { writtenKeys } from './written-keys';

const nothing = TextDocument.create('', 'kerfbook', 0, '');

/**
 * Proposals by place: lines of the block with what they do, names of the right kind with their
 * figures, units that fit the number, rules after `allow`, files inside quotes.
 */
export class KerfCompletion extends DefaultCompletionProvider {
    override readonly completionOptions: CompletionProviderOptions = { triggerCharacters: ['"', '/', '#', '.', ' '] };
    private readonly services: KerfServices;
    private readonly outside: OutsideServices;
    private readonly files: FileSystemProvider;
    private readonly descriptions: AstNodeDescriptionProvider;
    /** Of proposals whose file is not used yet, the path to use. */
    private readonly unused = new WeakMap<AstNodeDescription, string>();
    private known: { readonly before: string; readonly standing: Standing } | undefined;
    /** From where the text is read for the contexts that are being built. */
    private from = 0;

    constructor(services: KerfServices) {
        super(services);
        this.services = services;
        this.outside = services.outside;
        this.descriptions = services.workspace.AstNodeDescriptionProvider;
        this.files = services.shared.workspace.FileSystemProvider;
    }

    override async getCompletion(document: LangiumDocument, params: CompletionParams): Promise<CompletionList | undefined> {
        const offset = document.textDocument.offsetAt(params.position);
        if (isInComment(document.textDocument.getText(), readFrom(document, offset), offset)) return undefined;
        const list = await super.getCompletion(document, params);
        const typed = params.context?.triggerCharacter;
        return list && typed !== undefined ? { ...list, items: list.items.filter((item) => comesUnasked(item, typed)) } : list;
    }

    /** All at once, so that no other question comes between. */
    protected override *buildContexts(document: LangiumDocument, position: Position): IterableIterator<CompletionContext> {
        this.from = readFrom(document, document.textDocument.offsetAt(position));
        yield* [...super.buildContexts(document, position)];
    }

    /** The token at the cursor and the one before it, of those that are really in the text. */
    protected override backtrackToAnyToken(text: string, offset: number) {
        const { from } = this;
        const lineEnd = text.indexOf('\n', offset);
        const read = text.slice(from, lineEnd < 0 ? undefined : lineEnd);
        const tokens = this.lexer.tokenize(read, { mode: 'partial' }).tokens.filter((token) => !isMadeUp(token));
        const next = tokens.findIndex(({ endOffset = 0 }) => from + endOffset >= offset);
        const here = next >= 0 && from + tokens[next]!.startOffset < offset ? tokens[next] : undefined;
        const previous = next < 0 ? tokens.at(-1) : tokens[next - 1];
        return {
            nextTokenStart: here ? from + here.startOffset : offset,
            nextTokenEnd: here ? from + here.startOffset + here.image.length : offset,
            ...(previous && {
                previousTokenStart: from + previous.startOffset,
                previousTokenEnd: from + previous.startOffset + previous.image.length,
            }),
        };
    }

    /** Only the open blocks and the statement before the cursor decide, so that broken lines elsewhere do not matter. */
    protected override findFeaturesAt(document: TextDocument, offset: number): NextFeature[] {
        const { heads, statement, atStart } = this.standing(document.getText().slice(this.from, offset));
        const goesOn = this.featuresAfter(`${heads}${statement}`) ?? [];
        // On a new line the statement before may go on, or another begin, even where that one is not finished.
        return atStart ? [...(this.featuresAfter(heads) ?? []), ...goesOn] : goesOn;
    }

    /** What can come after a text; undefined where the parser cannot read it to its end. */
    private featuresAfter(text: string): NextFeature[] | undefined {
        if (text.trim() === '') return super.findFeaturesAt(nothing, 0);
        const { tokens, tokenIndex, elementStack } = this.completionParser.parse(text);
        if (tokenIndex < tokens.length && tokenIndex === 0) return undefined;
        const left = tokens.slice(tokenIndex).map((token) => ({ ...token, tokenType: wordType(token) }));
        const features = findNextFeatures([elementStack.map((feature) => ({ feature }))], left);
        return features.length === 0 && left.length > 0 ? undefined : features;
    }

    private standing(before: string): Standing {
        if (this.known?.before !== before) this.known = { before, standing: standingAfter(before, this.lexer) };
        return this.known.standing;
    }

    protected override completionFor(
        context: CompletionContext,
        next: NextFeature,
        acceptor: CompletionAcceptor,
    ): MaybePromise<void> {
        const { feature } = next;
        if (!GrammarAST.isRuleCall(feature)) return super.completionFor(context, next, acceptor);
        const rule = AstUtils.getContainerOfType(feature, GrammarAST.isParserRule)?.name ?? '';
        const terminal = feature.rule.$refText;
        if (rule === 'UnitName' && terminal === 'ID') {
            for (const proposal of proposeUnits(context.node)) acceptor(context, proposal);
        } else if (rule === 'Allow' && terminal === 'ID') this.rules(context, acceptor);
        else if (rule === 'ArtUse' && terminal !== 'ID') return this.picks(context, acceptor);
        else if (terminal === 'STRING' && (rule === 'Art' || rule === 'Use')) return this.paths(context, rule, acceptor);
        else if (isTrait(context.node)) this.choices(context, feature, acceptor);
    }

    /** What can be named goes by the line that is open: the cursor may stand in a number of it. */
    protected override getReferenceCandidates(info: ReferenceInfo, context: CompletionContext) {
        const takes = (node: AstNode) =>
            this.astReflection.getTypeMetaData(node.$type).properties[info.property]?.referenceType !== undefined;
        let container: AstNode | undefined = info.container;
        while (container !== undefined && !takes(container)) container = container.$container;
        const asked = { ...info, container: container ?? info.container };
        const unused = stockOutOfSight(asked, context.document, this.services).map(({ entry, document, path }) => {
            const description = this.descriptions.createDescription(entry, entry.name, document);
            this.unused.set(description, path);
            return description;
        });
        return super.getReferenceCandidates(asked, context).concat(unused);
    }

    /** First what is found at this step, then what is found in its recipe, then every other rule. */
    private rules(context: CompletionContext, acceptor: CompletionAcceptor): void {
        const found = this.outside.diagnostics(context.document) ?? [];
        const holders = [isStep, isRecipe].map((is) => AstUtils.getContainerOfType<AstNode>(context.node, is)?.$cstNode?.range);
        const foundIn = (rule: string, range: Range | undefined) =>
            found.find(({ code, range: { start } }) => code === rule && range !== undefined && isWithin(start, range));
        for (const { id, title, condition } of this.outside.pages.values()) {
            const at = holders.findIndex((range) => foundIn(id, range) !== undefined);
            const finding = at < 0 ? undefined : foundIn(id, holders[at])?.message;
            acceptor(context, {
                label: id,
                kind: CompletionItemKind.EnumMember,
                detail: title,
                sortText: `${at < 0 ? holders.length : at}${id}`,
                documentation: typeof finding === 'object' ? finding : { kind: 'markdown', value: finding ?? condition },
                insertText: `${id} because "$1"`,
                insertTextFormat: InsertTextFormat.Snippet,
            });
        }
    }

    private choices(context: CompletionContext, feature: GrammarAST.RuleCall, acceptor: CompletionAcceptor): void {
        const { node } = context;
        if (!isTrait(node)) return;
        // A choice that is a word of the language as well is proposed as that.
        const holder: AstNode = feature.$container;
        const others = GrammarAST.isAlternatives(holder) ? holder.elements : [];
        const words = new Set(others.filter(GrammarAST.isKeyword).map(({ value }) => value));
        for (const choice of propertyOf(node.$container.$type, node.key)?.choices ?? []) {
            if (words.has(choice)) continue;
            acceptor(context, { label: choice, kind: CompletionItemKind.EnumMember });
        }
        if (node.key !== 'currency') return;
        for (const label of currencyCodes()) {
            acceptor(context, { label, kind: CompletionItemKind.EnumMember, detail: currencyName(label) ?? '' });
        }
    }

    /** Ids and classes of the art that the line names; a `#` or `.` that was just typed is part of the name. */
    private async picks(context: CompletionContext, acceptor: CompletionAcceptor): Promise<void> {
        const art = isArtUse(context.node) ? context.node.art?.ref : undefined;
        const uri = resolvePath(art?.path, context.document.uri)?.toString();
        const names = uri === undefined ? undefined : await this.outside.artNames(uri);
        const text = context.textDocument.getText();
        const before = text.slice(0, context.offset);
        const typed = /[#.](?:[\w-]*|"(?:\\.|[^"\\\n])*)$/.exec(before)?.[0].length ?? 0;
        // The editor closes a quote by itself.
        const closed = before.slice(context.offset - typed).includes('"') && text[context.offset] === '"' ? 1 : 0;
        const range = {
            start: context.textDocument.positionAt(context.offset - typed),
            end: context.textDocument.positionAt(context.offset + closed),
        };
        for (const proposal of names === undefined ? [] : proposePicks(names)) {
            if (isArtUse(context.node) && context.node.picks.some((pick) => pickText(pick) === proposal.label)) continue;
            acceptor(context, { ...proposal, textEdit: { newText: proposal.label, range } });
        }
    }

    private async paths(context: CompletionContext, rule: 'Art' | 'Use', acceptor: CompletionAcceptor): Promise<void> {
        const text = context.textDocument.getText();
        const typed = text.slice(context.tokenOffset, context.offset).replace(/^"/, '');
        const start = context.textDocument.positionAt(context.tokenOffset);
        const end = context.textDocument.positionAt(Math.max(context.offset, context.tokenEndOffset));
        const wanted = rule === 'Art' ? 'art' : 'recipe';
        for (const proposal of await proposePaths(typed, context.document.uri, wanted, this.files)) {
            const newText = `"${proposal.label}"`;
            acceptor(context, { ...proposal, filterText: newText, textEdit: { newText, range: { start, end } } });
        }
    }

    protected override completionForKeyword(
        context: CompletionContext,
        keyword: GrammarAST.Keyword,
        acceptor: CompletionAcceptor,
    ): void {
        if (!this.filterKeyword(context, keyword)) return;
        const { document, tokenOffset } = context;
        const before = context.textDocument.getText().slice(readFrom(document, tokenOffset), tokenOffset);
        const standing = this.standing(before);
        const written = writtenKeys(context.node, standing.blocks.at(-1) ?? '', tokenOffset);
        const proposal = proposeWord(keyword, standing, written);
        if (proposal !== undefined) acceptor(context, proposal);
    }

    protected override createReferenceCompletionItem(
        description: AstNodeDescription,
        _info: ReferenceInfo,
        context: CompletionContext,
    ): CompletionValueItem {
        const { node, name } = description;
        const own = description.documentUri.toString() === context.document.uri.toString();
        const path = this.unused.get(description);
        const origin = path !== undefined ? '3' : isBuiltIn(description.documentUri.toString()) ? '2' : own ? '0' : '1';
        const detail = [node === undefined ? '' : detailOf(node), path === undefined ? '' : `adds use "${path}"`];
        return {
            nodeDescription: description,
            kind: CompletionItemKind.Reference,
            // Grits are numbers: coarse comes before fine.
            sortText: `0${origin}${/^\d+$/.test(name) ? name.padStart(6, '0') : name}`,
            ...(node !== undefined && {
                detail: detail.filter((part) => part !== '').join(' · '),
                data: declaredAt(node, this.services),
            }),
            ...(path !== undefined && { additionalTextEdits: [useEdit(path, context.document)] }),
        };
    }

    protected override fillCompletionItem(context: CompletionContext, item: CompletionValueItem): CompletionItem | undefined {
        const filled = super.fillCompletionItem(context, item);
        const takesSnippets = this.clientCapabilities?.completionItem?.snippetSupport === true;
        if (filled === undefined || takesSnippets || filled.insertTextFormat !== InsertTextFormat.Snippet) return filled;
        const { insertTextFormat: _format, insertText: _text, textEdit: _edit, ...plain } = filled;
        return super.fillCompletionItem(context, plain as CompletionValueItem);
    }
}

function isWithin({ line }: Position, { start, end }: Range): boolean {
    return line >= start.line && line <= end.line;
}

/** "board · 12 mm, black-walnut": the kind of thing and what tells it from others. */
function detailOf(node: AstNode): string {
    return [constructOf(node.$type)?.word, summaryOf(node)].filter((part) => part !== undefined && part !== '').join(' · ');
}

/** Behind the uses that are there, or at the top of the file. */
function useEdit(path: string, document: LangiumDocument): TextEdit {
    const file = document.parseResult.value;
    const last = isFile(file) ? file.uses.findLast(({ $cstNode }) => $cstNode !== undefined)?.$cstNode : undefined;
    const { lineBreak } = new Layout(document.textDocument.getText());
    const at = document.textDocument.positionAt(last?.end ?? 0);
    const newText = last === undefined ? `use "${path}"${lineBreak}${lineBreak}` : `${lineBreak}use "${path}"`;
    return { range: { start: at, end: at }, newText };
}

/** What may open by itself while typing: behind a blank only what is wanted there, and nothing that could also be a new line. */
function comesUnasked({ label, kind }: CompletionItem, typed: string): boolean {
    if (typed === '#' || typed === '.') return label.startsWith(typed);
    return typed !== ' ' || (kind !== CompletionItemKind.Keyword && kind !== CompletionItemKind.Property);
}
