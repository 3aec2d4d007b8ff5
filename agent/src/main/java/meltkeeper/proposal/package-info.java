/**
 * What unknown messages may mean, by name, range and behaviour, as a mapping to begin with: pure.
 */
@NullMarked
package meltkeeper.proposal;

import org.jspecify.annotations.NullMarked;
