import path from 'node:path';
import { fileURLToPath } from 'node:url';
import type { LangiumDocument } from 'langium';
import { type PlacedFinding, placedFindings } from '../report/placed-finding';
import type { Workshop } from '../workshop/workshop';

/** Everything there is to say of a file, its places as paths from here. */
export function allFindings(workshop: Workshop, document: LangiumDocument): Promise<PlacedFinding[]> {
    return placedFindings(workshop, document, shortPath);
}

/** The path from here; the address itself of what is no file, such as built-in stock. */
export function shortPath(document: LangiumDocument): string {
    if (document.uri.scheme !== 'file') return document.uri.toString();
    return path.relative(process.cwd(), fileURLToPath(document.uri.toString())) || '.';
}
