import path from 'node:path';
import { fileURLToPath } from 'node:url';
import type { LangiumDocument } from 'langium';
import type { Finding } from '../../shared/recipe/finding';
import type { Workshop } from '../workshop/workshop';

/** A finding with its place as people and tools read it: path from here, line and column from 1. */
export interface PlacedFinding {
    readonly finding: Finding;
    readonly file: string;
    readonly line: number;
    readonly column: number;
    readonly endLine: number;
    readonly endColumn: number;
}

/** Everything there is to say of a file, in the order of its lines: what the editor shows, and nothing else. */
export async function allFindings(workshop: Workshop, document: LangiumDocument): Promise<PlacedFinding[]> {
    const uri = document.uri.toString();
    const findings = [...workshop.textFindings(document), ...((await workshop.tradeFindings(document)) ?? [])];
    return findings
        .filter(({ where }) => where.uri === uri)
        .sort((a, b) => a.where.offset - b.where.offset || (a.rule < b.rule ? -1 : 1))
        .map((finding) => placed(finding, document));
}

function placed(finding: Finding, document: LangiumDocument): PlacedFinding {
    const start = document.textDocument.positionAt(finding.where.offset);
    const end = document.textDocument.positionAt(finding.where.offset + finding.where.length);
    return {
        finding,
        file: shortPath(document),
        line: start.line + 1,
        column: start.character + 1,
        endLine: end.line + 1,
        endColumn: end.character + 1,
    };
}

export function shortPath(document: LangiumDocument): string {
    return path.relative(process.cwd(), fileURLToPath(document.uri.toString())) || '.';
}
