import type { CabinInput } from '../input';
import { type Dimensions, resolveDimensions } from './dimensions';
import type { Panel, Refusal } from './model';
import { buildShell } from './shell/build-shell';
import { getTemplate, TEMPLATES, type TemplateData } from './templates';

export type TemplateShellAnswer =
  | { ok: true; template: TemplateData; dimensions: Dimensions; panels: readonly Panel[] }
  | { ok: false; error: Refusal };

/** A template with the plan's dimensions put in, and the panels that follow from them. */
export function buildTemplateShell(input: CabinInput): TemplateShellAnswer {
  const template = getTemplate(input.template);
  if (!template) {
    const known = TEMPLATES.map(({ id }) => id).join(', ');
    const message = `there is no template "${input.template}" (known: ${known}, none)`;
    return { ok: false, error: { path: 'cabin.template', message } };
  }
  const resolved = resolveDimensions(template, input.dimensions);
  if (!resolved.ok) return resolved;
  const { dimensions } = resolved;
  const shell = buildShell(dimensions, {
    rows: template.rows,
    wheelSide: input.wheelSide,
    thirdSideGlass: template.body.thirdSideGlass,
    templateDimensions: template.dimensions,
  });
  return shell.ok ? { ok: true, template, dimensions, panels: shell.panels } : shell;
}
