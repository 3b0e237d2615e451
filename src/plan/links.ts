/** The fuse-links and breakers of a plan, and the families that they may be of. */
import type { Fitting, Link, LinkFamily, OwnLink, Settings } from './schema.ts';

/** Every link that a fitting holds, by its place in it: 'link', 'postLink', 'outputs[1].link'. */
export function linksOf(fitting: Fitting): { readonly where: string; readonly link: Link }[] {
  switch (fitting.kind) {
    case 'fuse':
    case 'breaker':
      return [{ where: 'link', link: fitting.link }];
    case 'battery':
      return fitting.postLink === null ? [] : [{ where: 'postLink', link: fitting.postLink }];
    case 'block':
      return fitting.outputs.flatMap(({ link }, index) =>
        link === null ? [] : [{ where: `outputs[${index}].link`, link }],
      );
    default:
      return [];
  }
}

const isOwn = (family: string): family is OwnLink['family'] => family.startsWith('own');

/** Whether a link may name that family: all may be, but the user's own only once it is told. */
export const isToldFamily = ({ ownLinks }: Pick<Settings, 'ownLinks'>, family: LinkFamily | 'auto'): boolean =>
  !isOwn(family) || ownLinks.some((own) => own.family === family);
