import type { LangiumDocument } from 'langium';
import type { Finding } from '../../shared/recipe/finding';
import { phrase } from '../../shared/recipe/phrase';
import { isCut, isEngrave, type Run } from '../generated/ast';
import { runsAndRecipesOf } from '../names/runs-in-sight';
import type { KerfLexer } from '../parsing/lexer';
import { readsLikeStep } from '../parsing/run-lines';
import { isWord, type Token } from '../parsing/token';
import type { KerfServices } from '../services';
import { mergedItems } from '../variants/merge';

/**
 * A step that is called like a word of a run, and stands there without its kind, is read as that word: what is found on its line
 * says how the step is written. Needs a linked document.
 */
export function withStepsTold(
    findings: readonly Finding[],
    document: LangiumDocument,
    services: KerfServices,
): readonly Finding[] {
    let told: Finding[] | undefined;
    for (const run of runsAndRecipesOf(document).runs) {
        const found = findings.filter(({ where, severity }) => severity === 'error' && isInside(run, where.offset));
        const steps = found.length === 0 ? undefined : stepsOf(run);
        if (steps === undefined || steps.size === 0) continue;
        const { offset = 0, end = 0 } = run.$cstNode ?? {};
        const tokens = (services.parser.Lexer as KerfLexer).written(document.textDocument.getText());
        const own = tokens.filter(({ startOffset }) => startOffset >= offset && startOffset < end);
        for (const [index, token] of own.entries()) {
            const kind = steps.get(token.image);
            if (kind === undefined || !isBare(own, index)) continue;
            const line = token.startLine! - 1;
            const first = found.find(({ where }) => document.textDocument.positionAt(where.offset).line === line);
            const at = first === undefined ? -1 : (told ?? findings).indexOf(first);
            if (first === undefined || at < 0) continue;
            told ??= [...findings];
            told[at] = withStepTold(first, token, kind);
        }
    }
    return told ?? findings;
}

function isInside({ $cstNode }: Run, offset: number): boolean {
    return $cstNode !== undefined && offset >= $cstNode.offset && offset <= $cstNode.end;
}

/** The kinds of the steps of a run's recipe, by name. */
function stepsOf(run: Run): ReadonlyMap<string, string> {
    const recipe = run.recipe?.ref;
    const items = recipe === undefined ? [] : mergedItems(recipe);
    return new Map(items.flatMap((item) => (isEngrave(item) || isCut(item) ? [[item.name, item.$type.toLowerCase()]] : [])));
}

/** Whether a word that is a word for the language reads like the name of a step, and has no kind before it. */
function isBare(tokens: readonly Token[], index: number): boolean {
    const before = tokens[index - 1]?.image;
    return isWord(tokens[index]!) && before !== 'engrave' && before !== 'cut' && readsLikeStep(tokens, index);
}

function withStepTold(finding: Finding, { image, startOffset }: Token, kind: string): Finding {
    const where = { uri: finding.where.uri, offset: startOffset, length: 0 };
    return {
        ...finding,
        message: phrase`${finding.message} If the step \`${image}\` is meant, write \`${kind} ${image}\`.`,
        fixes: [
            ...finding.fixes,
            { title: phrase`Write \`${kind} ${image}\``, changes: [{ do: 'replace', where, text: `${kind} ` }] },
        ],
    };
}
