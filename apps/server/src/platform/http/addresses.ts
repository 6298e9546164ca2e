import { Problem } from '@hubwright/contracts/problems';
import { allOperations } from '@hubwright/contracts/routes';

const known = allOperations.map(({ path, method }) => ({
  method,
  pattern: new RegExp(`^${path.replaceAll('.', '\\.').replaceAll(/:\w+/g, '[^/]+')}$`),
}));

/** Why nothing answers at an address: it does not exist, or it exists for other methods, which `allow` then names. */
export function nothingAt(url: string): Problem {
  const path = url.split('?')[0] ?? '';
  const methods = known.filter(({ pattern }) => pattern.test(path)).map(({ method }) => method);
  if (methods.length === 0) return new Problem('not-found', 'There is nothing at this address');
  const allow = [...new Set(methods.flatMap((method) => (method === 'GET' ? ['GET', 'HEAD'] : [method])))].sort();
  return new Problem('method-not-allowed', `This address takes ${allow.join(', ')}`, { allow });
}
