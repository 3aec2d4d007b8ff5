/**
 * What lies ahead of the shop's parts: the model of {@code life} fed with what the store knows of
 * each part and of each hot end's days. How long parts last, when each is due, whether a batch gets
 * through, what to keep in stock.
 *
 * <p>{@link meltkeeper.outlook.OutlookDesk} answers the questions; what it has reckoned it keeps
 * until the parts change or the facts have aged, so that a scrape never fits a model.
 */
@NullMarked
package meltkeeper.outlook;

import org.jspecify.annotations.NullMarked;
