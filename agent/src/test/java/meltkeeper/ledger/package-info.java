@NullMarked
package meltkeeper.ledger;

import org.jspecify.annotations.NullMarked;
