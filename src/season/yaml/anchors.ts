import { type Alias, type Document, type Node, visit } from 'yaml';

/** Which node each alias (`*name`) of a document stands for: the last one so named above it. */
export class Anchors {
  private readonly targets = new Map<Alias, Node>();

  constructor(doc: Document) {
    const named = new Map<string, Node>();
    visit(doc, {
      Node: (_key, node) => {
        if ('anchor' in node && typeof node.anchor === 'string') named.set(node.anchor, node as Node);
      },
      Alias: (_key, alias) => {
        const target = named.get(alias.source);
        if (target !== undefined) this.targets.set(alias, target);
      },
    });
  }

  target(alias: Alias): Node | undefined {
    return this.targets.get(alias);
  }
}
