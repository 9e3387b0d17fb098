import { type AstNode, AstUtils } from 'langium';
import { KeptOn } from '../../shared/plan/kept';

/** Stock is named by many recipes: it is lowered once a linking of its file, which every change of what it leads to brings about. */
export function once<Node extends AstNode, Lowered>(lower: (node: Node) => Lowered): (node: Node) => Lowered {
    const known = new KeptOn<object, Map<Node, Lowered>>();
    return (node) => {
        const { references } = AstUtils.getDocument(node);
        let here = known.get(references);
        if (here === undefined) {
            here = new Map();
            known.set(references, here);
        }
        let lowered = here.get(node);
        if (lowered === undefined) {
            lowered = lower(node);
            here.set(node, lowered);
        }
        return lowered;
    };
}
