import { type AstNode, AstUtils, type CstNode, GrammarAST, isCompositeCstNode, isLeafCstNode } from 'langium';
import { KeptOn } from '../shared/plan/kept';
import { isBuiltIn } from './built-in';
import { clausesOf } from './editing/line-clauses';
import * as ast from './generated/ast';
import { treeOf } from './names/tree';
import { hashText } from './text-hash';
import { basesOf } from './variants/lineage';
import { renamedIn } from './vocabulary/editions';

const known = new KeptOn<object, Map<ast.Recipe, string>>();

/**
 * A fingerprint of what is written of a recipe: its text, that of the recipes it is based on, and the stock and routines it names,
 * directly or through others, as eight hexadecimal digits. Comments, layout, the order of lines that has no meaning, the spelling of
 * renamed words, and what makes no other piece (title, issue, number of pieces, exceptions, prices, days, counts, coupons) do not count;
 * nor does built-in stock beyond its name, which comes with the tool. Nothing that is worked out enters. Runs keep it for years:
 * whatever changes it for an unchanged text makes every recipe look changed. O(length of the texts). Needs linked documents.
 */
export function fingerprintOf(recipe: ast.Recipe): string {
    const { references } = AstUtils.getDocument(recipe);
    const here = known.get(references) ?? new Map<ast.Recipe, string>();
    known.set(references, here);
    const before = here.get(recipe);
    if (before !== undefined) return before;
    const mark = hashText([...writtenFor(recipe)].map(formOf).sort().join('\n'));
    here.set(recipe, mark);
    return mark;
}

/** Whether two marks are of the same text: one of them may be written shorter. */
export function isSameMark(a: string, b: string): boolean {
    return a.startsWith(b) || b.startsWith(a);
}

/** The recipe, its bases, and all stock and routines that they name. */
function writtenFor(recipe: ast.Recipe): Set<AstNode> {
    const found = new Set<AstNode>([recipe, ...basesOf(recipe)]);
    // What is added while it is walked through is walked through, too.
    for (const each of found) {
        for (const { reference } of treeOf(each).references) {
            const target = 'ref' in reference ? reference.ref : undefined;
            if (target === undefined || !(ast.isStock(target) || ast.isRoutine(target))) continue;
            if (!isBuiltIn(AstUtils.getDocument(target).uri.toString())) found.add(target);
        }
    }
    return found;
}

/** A declaration as its words alone. Lines of a block in a fixed order, but for steps: theirs is that of the work. */
function formOf(node: AstNode): string {
    const words: string[] = [];
    const lines: { readonly form: string; readonly isStep: boolean }[] = [];
    const collect = (cst: CstNode): void => {
        if (isLeafCstNode(cst)) {
            if (!cst.hidden && !isTitle(cst, node)) words.push(...wordsOf(cst.text, cst.tokenType.name, cst.grammarSource));
        } else if (isCompositeCstNode(cst)) {
            const { astNode } = cst;
            const isLine = astNode !== node && astNode.$container === node && astNode.$containerProperty === 'items';
            if (!isLine) for (const each of inOrder(cst, node)) collect(each);
            else if (counts(astNode)) lines.push({ form: formOf(astNode), isStep: isStepLike(astNode) });
        }
    };
    if (node.$cstNode !== undefined) collect(node.$cstNode);
    const unordered = lines.filter(({ isStep }) => !isStep).map(({ form }) => form);
    const ordered = lines.filter(({ isStep }) => isStep).map(({ form }) => form);
    const block = [...unordered.sort(), ...ordered];
    return block.length === 0 ? words.join(' ') : `${words.join(' ')} {${block.join(';')}}`;
}

/** Whether a line says what is made or of what; what else it says may change without the piece becoming another. */
function counts(line: AstNode): boolean {
    if (ast.isAllow(line) || ast.isSheetPrice(line) || ast.isFluidPrice(line) || ast.isDated(line)) return false;
    if (ast.isOnHand(line) || ast.isOffcut(line)) return false;
    return !(ast.isCount(line) && ast.isRecipe(line.$container) && (line.key === 'issue' || line.key === 'make'));
}

function isStepLike(line: AstNode): boolean {
    return ast.isStep(line) || ast.isInserted(line);
}

function isTitle(cst: CstNode, node: AstNode): boolean {
    return ast.isRecipe(node) && cst.text.startsWith('"');
}

/** The parts of a line of art with its clauses in the order in which they are laid out; of anything else as they stand. */
function inOrder(cst: CstNode & { readonly content: readonly CstNode[] }, node: AstNode): readonly CstNode[] {
    if (cst !== node.$cstNode || !(ast.isArtUse(node) || ast.isShape(node))) return cst.content;
    const { before, clauses } = clausesOf(node);
    return [...before, ...[...clauses].sort((a, b) => a.rank - b.rank).flatMap(({ parts }) => parts)];
}

/** A word as it would be if everybody spelled alike. Braces and commas only divide what is told apart without them. */
function wordsOf(text: string, token: string, source: GrammarAST.AbstractElement | undefined): string[] {
    if (text === '{' || text === '}' || text === ',') return [];
    if (token === 'NUMBER') return [String(Number(text))];
    if (text === '×') return ['x'];
    if (text === '±') return ['+-'];
    if (/^P\d+$/.test(text)) return [text.slice(1)];
    return [firstSpelling(source) ?? text.normalize('NFC').replace('µ', 'u')];
}

const firstSpellings = new Map<GrammarAST.AbstractElement, string | undefined>();

/** How a renamed word was spelled first: that never changes again. */
function firstSpelling(source: GrammarAST.AbstractElement | undefined): string | undefined {
    if (source === undefined || !GrammarAST.isKeyword(source)) return undefined;
    if (!firstSpellings.has(source)) {
        const rule = AstUtils.getContainerOfType(source, GrammarAST.isParserRule);
        firstSpellings.set(source, rule && renamedIn(rule.name)?.before);
    }
    return firstSpellings.get(source);
}
