# Made with R 4.2.2. Run here: Rscript decomposition.R. Invented: twenty shots with two 6-irons, in pairs, reversed in every
# other pair, from a golfer who tires and scatters more with the second. Writes the shots and what lm makes of them.
set.seed(20)
pair <- rep(1:10, each = 2)
club <- rep(c("Alder", "Rowan", "Rowan", "Alder"), 5)
order <- 1:20
speed <- round(86 + 0.3 * (club == "Rowan") - 0.04 * order + rnorm(10)[pair] + rnorm(20, 0, 0.6), 2)
face <- round(rnorm(20, 0.5 * (club == "Rowan"), 1.2), 2)
carry <- round(168 + 1.9 * (speed - 86) - 0.7 * face + 1.5 * (club == "Rowan") - 0.05 * order +
               rnorm(10, 0, 2)[pair] + rnorm(20, 0, ifelse(club == "Rowan", 2.5, 1)), 2)
shots <- data.frame(club, pair, order, speed, face, carry)
write.csv(shots, "decomposition_shots.csv", row.names = FALSE, quote = FALSE)

hc3 <- function(m) {
  x <- model.matrix(m); b <- solve(crossprod(x)); w <- (resid(m) / (1 - hatvalues(m)))^2
  b %*% crossprod(x * w, x) %*% b
}
rows <- list()
put <- function(case, part, value, se, df)
  rows[[length(rows) + 1]] <<- sprintf("%s,%s,%.15g,%.15g,%d,%.15g", case, part, value, se, df, 2 * pt(-abs(value / se), df))
split <- function(case, base, covariance, d) {
  at <- "clubRowan"
  f <- function(y, more = "") lm(as.formula(paste(y, "~", base, "club", more)), d)
  full <- f("carry", "+ speed + face"); total <- f("carry"); v <- covariance(full)
  put(case, "difference", coef(total)[[at]], sqrt(covariance(total)[at, at]), df.residual(total))
  put(case, "direct", coef(full)[[at]], sqrt(v[at, at]), df.residual(full))
  for (k in c("speed", "face")) {
    m <- f(k); b <- coef(full)[[k]]; s <- coef(m)[[at]]
    put(case, k, b * s, sqrt(b^2 * covariance(m)[at, at] + s^2 * v[k, k]), df.residual(full))
  }
}
split("shots", "", hc3, shots)
split("unequal", "", hc3, shots[-c(2, 3, 6, 7, 10), ])
split("order", "order +", hc3, shots)
split("pairs", "factor(pair) +", vcov, shots)
split("pairs and order", "factor(pair) + order +", vcov, shots)
t <- t.test(shots$carry[club == "Rowan"], shots$carry[club == "Alder"], paired = TRUE)  # both in the order of the pairs
stopifnot(abs(t$p.value - as.numeric(strsplit(rows[[13]], ",")[[1]][6])) < 1e-12)
writeLines(c("case,part,value,se,df,p", unlist(rows)), "decomposition_values.csv")
