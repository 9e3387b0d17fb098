import { type LangiumDocument, URI } from 'langium';
import type { Where } from '../../shared/quantity/where';
import { byGravity, type Finding, type Related } from '../../shared/recipe/finding';
import type { Silenced } from '../../shared/rules/examine-by';
import type { Workshop } from '../workshop/workshop';

/** A place as people and tools read it: path of the file, line and column from 1, the end behind the last character. */
export interface ReportPlace {
    readonly file: string;
    readonly line: number;
    readonly column: number;
    readonly endLine: number;
    readonly endColumn: number;
}

export interface PlacedFinding extends ReportPlace {
    readonly finding: Finding;
    readonly related: readonly (ReportPlace & Omit<Related, 'where'>)[];
}

/** How a file is called for those who read the report. */
export type Naming = (document: LangiumDocument) => string;

/**
 * Everything there is to say of a file, the gravest first: what the editor shows, and nothing else. What its recipes say of
 * a routine in another file comes last.
 */
export async function placedFindings(workshop: Workshop, document: LangiumDocument, naming: Naming): Promise<PlacedFinding[]> {
    const uri = document.uri.toString();
    const findings = [...workshop.textFindings(document), ...((await tradeFindings(workshop, document)) ?? [])];
    const isHere = ({ where }: Finding) => where.uri === uri;
    return findings
        .filter((finding) => isHere(finding) || finding.inRoutine === true)
        .sort((a, b) => Number(isHere(b)) - Number(isHere(a)) || byGravity(a, b))
        .map((finding) => ({
            finding,
            ...(placeOf(workshop, finding.where, naming) ?? placeIn(document, finding.where, naming)),
            related: finding.related.flatMap(({ where, ...said }) => {
                const place = placeOf(workshop, where, naming);
                return place === undefined ? [] : [{ ...place, ...said }];
            }),
        }));
}

/** The findings of several files, those of one routine once, at the first file that has them. */
export function inAllFiles(found: readonly (readonly PlacedFinding[])[]): PlacedFinding[] {
    const seen = new Set<string>();
    return found.flat().filter(({ finding: { rule, where, inRoutine } }) => {
        const key = `${rule} ${where.uri} ${where.offset} ${where.length}`;
        if (inRoutine !== true) return true;
        const isNew = !seen.has(key);
        seen.add(key);
        return isNew;
    });
}

export interface PlacedSilenced extends PlacedFinding {
    readonly reason: string;
    /** Where it is allowed. */
    readonly allowed?: ReportPlace;
}

/** What `allow … because` keeps quiet in a file, in the order of its lines. */
export function placedSilenced(
    workshop: Workshop,
    document: LangiumDocument,
    silenced: readonly Silenced[],
    naming: Naming,
): PlacedSilenced[] {
    const uri = document.uri.toString();
    return silenced
        .filter(({ finding }) => finding.where.uri === uri)
        .sort((a, b) => a.finding.where.offset - b.finding.where.offset)
        .map(({ finding, allow }) => {
            const allowed = placeOf(workshop, allow.where, naming);
            const place = placeIn(document, finding.where, naming);
            return { finding, ...place, related: [], reason: allow.reason, ...(allowed !== undefined && { allowed }) };
        });
}

/** Once more when somebody else has asked the same meanwhile, as an editor does that shows the file. */
async function tradeFindings(workshop: Workshop, document: LangiumDocument): Promise<readonly Finding[] | undefined> {
    for (let times = 0; times < 5; times += 1) {
        const findings = await workshop.tradeFindings(document);
        if (findings !== undefined) return findings;
    }
    return undefined;
}

function placeOf({ services }: Workshop, where: Where, naming: Naming): ReportPlace | undefined {
    const documents = services.shared.workspace.LangiumDocuments;
    const document = where.uri === '' ? undefined : documents.getDocument(URI.parse(where.uri));
    return document === undefined ? undefined : placeIn(document, where, naming);
}

function placeIn(document: LangiumDocument, { offset, length }: Where, naming: Naming): ReportPlace {
    const start = document.textDocument.positionAt(offset);
    const end = document.textDocument.positionAt(offset + length);
    return {
        file: naming(document),
        line: start.line + 1,
        column: start.character + 1,
        endLine: end.line + 1,
        endColumn: end.character + 1,
    };
}
