# Values of RandomEffectsTest and WorkabilityTest, from the formulas of the class texts, by R 4 with base functions only:
# Rscript random-effects.R
fit <- function(y, v, level=0.95, lab) {
  sc <- function(t){w<-1/(v+t); mu<-sum(w*y)/sum(w); sum(w^2*((y-mu)^2-v))/sum(w^2)+1/sum(w)-t}
  if (sc(0) > 0) tau2 <- uniroot(sc, c(0, 50*var(y)), tol=1e-15)$root else tau2 <- 0
  k <- length(y); w<-1/(v+tau2); mu<-sum(w*y)/sum(w)
  q <- sum(w*(y-mu)^2)/(k-1); se<-sqrt(q/sum(w)); tq<-qt(1-(1-level)/2,k-1)
  Q <- sum((y-sum(y/v)/sum(1/v))^2/v)
  gq <- function(t){w<-1/(v+t); mu<-sum(w*y)/sum(w); sum(w*(y-mu)^2)}
  pr <- function(target) if (gq(0) < target) 0 else uniroot(function(t) gq(t)-target, c(0,1e4*var(y)), tol=1e-15)$root
  lo <- pr(qchisq(1-(1-level)/2,k-1)); hi <- pr(qchisq((1-level)/2,k-1))
  pi <- qt(1-(1-level)/2, k-1)*sqrt(tau2+se^2)
  cat(lab, "\n"); cat(sprintf("%.10g\n", c(tau2=tau2, mu=mu, se=se, lo=mu-tq*se, hi=mu+tq*se, Q=Q, pQ=pchisq(Q,k-1,lower=FALSE), tlo=lo, thi=hi, plo=mu-pi, phi=mu+pi)))
}
a<-c(4,6,3,62,33,180,8,505,29,17,186,5,27); b<-c(119,300,228,13536,5036,1361,2537,87886,7470,1699,50448,2493,16886)
c<-c(11,29,11,248,47,372,10,499,45,65,141,3,29); d<-c(128,274,209,12619,5761,1079,619,87892,7232,1600,27197,2338,17825)
y<-log(a/(a+b))-log(c/(c+d)); v<-1/a-1/(a+b)+1/c-1/(c+d)
fit(y,v,lab="bcg"); print(cbind(y,v),digits=15)
fit(c(3.1,5.6,-0.4,4.2,2.8,7.5),c(1.2,2.5,0.9,1.6,3.1,2.0),lab="six")
fit(c(3.1,3.6,2.4,3.2,2.8),c(1.2,2.5,0.9,1.6,3.1),lab="alike")
# noncentral t limits: t=3.2 df=21
for (t in c(3.2)) { df<-21; f<-function(p) uniroot(function(n) pt(t,df,n)-p, c(-5,20), tol=1e-12)$root; print(c(f(.975),f(.025)),digits=12) }
print(qf(c(.025,.975),21,16),digits=12)
