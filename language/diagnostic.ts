import type { LangiumDocument } from 'langium';
import { type Diagnostic, DiagnosticSeverity, DiagnosticTag, type Range } from 'vscode-languageserver-types';
import type { Where } from '../shared/quantity/where';
import type { Finding, Fix } from '../shared/recipe/finding';

/** What a diagnostic carries so that its fixes can be offered without planning anew. */
export interface DiagnosticData {
    readonly rule: string;
    readonly where: Where;
    readonly fixes: readonly Fix[];
    /** Whether `allow` may be offered for it. */
    readonly allowable: boolean;
}

const severities = {
    error: DiagnosticSeverity.Error,
    warning: DiagnosticSeverity.Warning,
    info: DiagnosticSeverity.Information,
    hint: DiagnosticSeverity.Hint,
} as const;

/** What is of no effect where it stands: an editor fades it. */
const unnecessary: ReadonlySet<string> = new Set(['unused-name', 'allow-silences-nothing', 'pace-unused']);

/** What an editor shows of a finding beside its message. */
export interface Shown {
    readonly tags: boolean;
    /** Address of a rule's page. */
    readonly pageOf: (rule: string) => string | undefined;
}

/**
 * A finding as the editor shows it. `allowable` says whether its rule can be silenced with `allow`.
 * `others` finds the documents in which related places lie; what lies in none of them is left out.
 */
export function toDiagnostic(
    finding: Finding,
    document: LangiumDocument,
    allowable = false,
    others: (uri: string) => LangiumDocument | undefined = () => undefined,
    { tags, pageOf }: Shown = { tags: true, pageOf: () => undefined },
): Diagnostic {
    const { rule, where, fixes } = finding;
    const href = pageOf(rule);
    const data: DiagnosticData = { rule, where, fixes, allowable: allowable && finding.firm !== true };
    const related = finding.related.flatMap((each) => {
        const { uri } = each.where;
        const there = uri === document.uri.toString() ? document : others(uri);
        return there === undefined ? [] : [{ message: each.message, location: { uri, range: rangeOf(each.where, there) } }];
    });
    return {
        range: rangeOf(finding.where, document),
        severity: severities[finding.severity],
        code: rule,
        ...(href !== undefined && { codeDescription: { href } }),
        source: 'kerfbook',
        message: finding.message,
        data,
        ...(related.length > 0 && { relatedInformation: related }),
        ...(tags && unnecessary.has(rule) && { tags: [DiagnosticTag.Unnecessary] }),
    };
}

/** A place as a range of the document; a place in another file needs that file's document. */
export function rangeOf(where: Where, document: LangiumDocument): Range {
    const text = document.textDocument;
    return { start: text.positionAt(where.offset), end: text.positionAt(where.offset + where.length) };
}
