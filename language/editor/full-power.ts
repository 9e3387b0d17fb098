import { type AstNode, AstUtils } from 'langium';
import * as ast from '../generated/ast';
import { quantityOf } from '../lowering/quantity';

/** Full power in watts of the laser that a number under `power`, `least power` or in a row of a coupon or a run is a share of. */
export function fullPower(number: AstNode): number | undefined {
    const line = number.$container;
    const isShare =
        (ast.isFigure(line) && (line.key === 'power' || line.key === 'leastpower')) ||
        ((ast.isBurn(line) || ast.isBurnt(line)) && number.$containerProperty === 'power');
    const laser = isShare ? laserOf(number) : undefined;
    const full = laser?.items.find((item): item is ast.Figure => ast.isFigure(item) && item.key === 'power')?.value;
    const watts = full === number || full === undefined || !ast.isQuantity(full) ? undefined : quantityOf(full);
    return watts?.dimension === 'power' && watts.value > 0 ? watts.value : undefined;
}

function laserOf(node: AstNode): ast.Laser | undefined {
    const laser = AstUtils.getContainerOfType(node, ast.isLaser);
    const coupon = AstUtils.getContainerOfType(node, ast.isCoupon);
    const run = AstUtils.getContainerOfType(node, ast.isRun);
    const recipe = AstUtils.getContainerOfType(node, ast.isRecipe) ?? run?.recipe?.ref;
    const ofRun = run?.items.find(ast.isLaserUse)?.laser?.ref;
    return laser ?? coupon?.laser?.ref ?? ofRun ?? recipe?.items.find(ast.isLaserUse)?.laser?.ref;
}
