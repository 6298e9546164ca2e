import ts from 'typescript';

/** How large a thing may be. Components are functions with a capital letter in a .tsx file. */
export const limits = { file: 300, command: 120, component: 150, function: 40, parameters: 3 };

/** The most lines a file of this name may have. */
export function fileLimit(path: string): number {
  if (path.endsWith('.command.ts')) return limits.command;
  return path.endsWith('.tsx') && !path.endsWith('.test.tsx') ? limits.component : limits.file;
}

/** What is too large inside a file, as sentences `path:line name …`. A specification's blocks may be as long as its story. */
export function tooLargeInside(path: string, text: string): string[] {
  const file = ts.createSourceFile(path, text, ts.ScriptTarget.Latest, true);
  const found: string[] = [];
  const visit = (node: ts.Node): void => {
    if (ts.isFunctionLike(node) && 'body' in node && node.body)
      found.push(...tooLarge(node as ts.FunctionLikeDeclaration, file));
    ts.forEachChild(node, visit);
  };
  visit(file);
  return found;
}

function tooLarge(node: ts.FunctionLikeDeclaration, file: ts.SourceFile): string[] {
  const name = nameOf(node);
  const first = file.getLineAndCharacterOfPosition(node.getStart(file)).line;
  const lines = file.getLineAndCharacterOfPosition(node.getEnd()).line - first + 1;
  const most = file.fileName.endsWith('.tsx') && /^[A-Z]/.test(name) ? limits.component : limits.function;
  const where = `${file.fileName}:${first + 1} ${name}`;
  const isTest = /\.test\.tsx?$/.test(file.fileName);
  // A constructor's are the fields of its class, or injected; those of a test's block are the columns of its table.
  const parameters = ts.isConstructorDeclaration(node) || isTest ? 0 : node.parameters.length;
  return [
    ...(lines > most && !isTest ? [`${where} has ${lines} lines, ${most} are allowed`] : []),
    ...(parameters > limits.parameters
      ? [`${where} has ${parameters} parameters, ${limits.parameters} are allowed`]
      : []),
  ];
}

function nameOf(node: ts.FunctionLikeDeclaration): string {
  if (ts.isConstructorDeclaration(node)) return 'constructor';
  if (node.name) return node.name.getText();
  const { parent } = node;
  if (ts.isVariableDeclaration(parent) || ts.isPropertyAssignment(parent)) return parent.name.getText();
  return 'a function without a name';
}

/** Whether a file does nothing but hand on what other files export. */
export function isBarrel(path: string, text: string): boolean {
  const { statements } = ts.createSourceFile(path, text, ts.ScriptTarget.Latest);
  return statements.length > 0 && statements.every((each) => ts.isExportDeclaration(each) && each.moduleSpecifier);
}
