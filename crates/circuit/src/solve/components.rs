//! Which nodes belong together: a forest in which every node points to a lower one, and each tree is a component.

/// Joins the components of two nodes under the lower of their representatives.
pub(crate) fn join(parent: &mut [usize], a: usize, b: usize) {
    let (a, b) = (find(parent, a), find(parent, b));
    parent[a.max(b)] = a.min(b);
}

/// Lets each node name its representative at once. Parents are lower than their children, so that one pass upwards does it.
pub(crate) fn shorten(parent: &mut [usize]) {
    for node in 0..parent.len() {
        parent[node] = parent[parent[node]];
    }
}

/// Representative of a node, its way there shortened.
fn find(parent: &mut [usize], mut node: usize) -> usize {
    while parent[node] != node {
        parent[node] = parent[parent[node]];
        node = parent[node];
    }
    node
}
