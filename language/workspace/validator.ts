import type { DocumentValidator, LangiumDocument } from 'langium';
import type { Diagnostic } from 'vscode-languageserver-types';
import { isBuiltIn } from '../built-in';
import { toDiagnostic } from '../diagnostic';
import type { KerfServices } from '../services';
import { textFindings } from '../text-findings';

/** Hands the text's own findings to Langium's build, which sends them to the editor. */
export class KerfValidator implements DocumentValidator {
    constructor(private readonly services: KerfServices) {}

    async validateDocument(document: LangiumDocument): Promise<Diagnostic[]> {
        if (isBuiltIn(document.uri.toString())) return [];
        return textFindings(document, this.services).map((finding) => toDiagnostic(finding, document));
    }
}
