// deno-fmt-ignore-file
// deno-lint-ignore-file
// Made by `deno task special-functions` from packages of the stdlib project on
// npm; do not edit. Licences: LICENSE and NOTICE in this folder, and the notices
// in the text.
var FI=Object.create;var v3=Object.defineProperty;var yI=Object.getOwnPropertyDescriptor;var wI=Object.getOwnPropertyNames;var LI=Object.getPrototypeOf,HI=Object.prototype.hasOwnProperty;var s=(r,e)=>()=>(e||r((e={exports:{}}).exports,e),e.exports);var PI=(r,e,i,t)=>{if(e&&typeof e=="object"||typeof e=="function")for(let u of wI(e))!HI.call(r,u)&&u!==i&&v3(r,u,{get:()=>e[u],enumerable:!(t=yI(e,u))||t.enumerable});return r};var sr=(r,e,i)=>(i=r!=null?FI(LI(r)):{},PI(1 ?v3(i,"default",{value:r,enumerable:!0}):i,r));var o3=s((IU,n3)=>{"use strict";var dI=typeof Object.defineProperty=="function"?Object.defineProperty:null;n3.exports=dI});var l3=s((_U,f3)=>{"use strict";var GI=o3();function RI(){try{return GI({},"x",{}),!0}catch{return!1}}f3.exports=RI});var p3=s((NU,c3)=>{"use strict";var MI=Object.defineProperty;c3.exports=MI});var U1=s((AU,q3)=>{"use strict";function WI(r){return typeof r=="number"}q3.exports=WI});var V1=s((gU,I3)=>{"use strict";function CI(r){return r[0]==="-"}function m3(r){var e="",i;for(i=0;i<r;i++)e+="0";return e}function DI(r,e,i){var t=!1,u=e-r.length;return u<0||(CI(r)&&(t=!0,r=r.substr(1)),r=i?r+m3(u):m3(u)+r,t&&(r="-"+r)),r}I3.exports=DI});var g3=s((SU,A3)=>{"use strict";var BI=U1(),_3=V1(),XI=String.prototype.toLowerCase,N3=String.prototype.toUpperCase;function UI(r){var e,i,t;switch(r.specifier){case"b":e=2;break;case"o":e=8;break;case"x":case"X":e=16;break;case"d":case"i":case"u":default:e=10;break}if(i=r.arg,t=parseInt(i,10),!isFinite(t)){if(!BI(i))throw new Error("invalid integer. Value: "+i);t=0}return t<0&&(r.specifier==="u"||e!==10)&&(t=4294967295+t+1),t<0?(i=(-t).toString(e),r.precision&&(i=_3(i,r.precision,r.padRight)),i="-"+i):(i=t.toString(e),!t&&!r.precision?i="":r.precision&&(i=_3(i,r.precision,r.padRight)),r.sign&&(i=r.sign+i)),e===16&&(r.alternate&&(i="0x"+i),i=r.specifier===N3.call(r.specifier)?N3.call(i):XI.call(i)),e===8&&r.alternate&&i.charAt(0)!=="0"&&(i="0"+i),i}A3.exports=UI});var E3=s((EU,S3)=>{"use strict";function VI(r){return typeof r=="string"}S3.exports=VI});var T3=s((OU,h3)=>{"use strict";var kI=Math.abs,bI=String.prototype.toLowerCase,O3=String.prototype.toUpperCase,vr=String.prototype.replace,KI=/e\+(\d)$/,QI=/e-(\d)$/,YI=/^(\d+)$/,ZI=/^(\d+)e/,$I=/\.0$/,JI=/\.0*e/,jI=/(\..*[^0])0*e/;function zI(r,e){var i,t;switch(e.specifier){case"e":case"E":t=r.toExponential(e.precision);break;case"f":case"F":t=r.toFixed(e.precision);break;case"g":case"G":kI(r)<1e-4?(i=e.precision,i>0&&(i-=1),t=r.toExponential(i)):t=r.toPrecision(e.precision),e.alternate||(t=vr.call(t,jI,"$1e"),t=vr.call(t,JI,"e"),t=vr.call(t,$I,""));break;default:throw new Error("invalid double notation. Value: "+e.specifier)}return t=vr.call(t,KI,"e+0$1"),t=vr.call(t,QI,"e-0$1"),e.alternate&&(t=vr.call(t,YI,"$1."),t=vr.call(t,ZI,"$1.e")),r>=0&&e.sign&&(t=e.sign+t),t=e.specifier===O3.call(e.specifier)?O3.call(t):bI.call(t),t}h3.exports=zI});var w3=s((hU,y3)=>{"use strict";function F3(r){var e="",i;for(i=0;i<r;i++)e+=" ";return e}function xI(r,e,i){var t=e-r.length;return t<0||(r=i?r+F3(t):F3(t)+r),r}y3.exports=xI});var H3=s((TU,L3)=>{"use strict";var r_=g3(),e_=E3(),i_=U1(),t_=T3(),a_=w3(),u_=V1(),s_=String.fromCharCode,v_=Array.isArray;function he(r){return r!==r}function n_(r){var e={};return e.specifier=r.specifier,e.precision=r.precision===void 0?1:r.precision,e.width=r.width,e.flags=r.flags||"",e.mapping=r.mapping,e}function o_(r){var e,i,t,u,a,v,n,o,c,f;if(!v_(r))throw new TypeError("invalid argument. First argument must be an array. Value: `"+r+"`.");for(v="",n=1,c=0;c<r.length;c++)if(t=r[c],e_(t))v+=t;else{if(e=t.precision!==void 0,t=n_(t),!t.specifier)throw new TypeError("invalid argument. Token is missing `specifier` property. Index: `"+c+"`. Value: `"+t+"`.");for(t.mapping&&(n=t.mapping),i=t.flags,f=0;f<i.length;f++)switch(u=i.charAt(f),u){case" ":t.sign=" ";break;case"+":t.sign="+";break;case"-":t.padRight=!0,t.padZeros=!1;break;case"0":t.padZeros=i.indexOf("-")<0;break;case"#":t.alternate=!0;break;default:throw new Error("invalid flag: "+u)}if(t.width==="*"){if(t.width=parseInt(arguments[n],10),n+=1,he(t.width))throw new TypeError("the argument for * width at position "+n+" is not a number. Value: `"+t.width+"`.");t.width<0&&(t.padRight=!0,t.width=-t.width)}if(e&&t.precision==="*"){if(t.precision=parseInt(arguments[n],10),n+=1,he(t.precision))throw new TypeError("the argument for * precision at position "+n+" is not a number. Value: `"+t.precision+"`.");t.precision<0&&(t.precision=1,e=!1)}switch(t.arg=arguments[n],t.specifier){case"b":case"o":case"x":case"X":case"d":case"i":case"u":e&&(t.padZeros=!1),t.arg=r_(t);break;case"s":t.maxWidth=e?t.precision:-1,t.arg=String(t.arg);break;case"c":if(!he(t.arg)){if(a=parseInt(t.arg,10),a<0||a>127)throw new Error("invalid character code. Value: "+t.arg);t.arg=he(a)?String(t.arg):s_(a)}break;case"e":case"E":case"f":case"F":case"g":case"G":if(e||(t.precision=6),o=parseFloat(t.arg),!isFinite(o)){if(!i_(t.arg))throw new Error("invalid floating-point number. Value: "+v);o=t.arg,t.padZeros=!1}t.arg=t_(o,t);break;default:throw new Error("invalid specifier: "+t.specifier)}t.maxWidth>=0&&t.arg.length>t.maxWidth&&(t.arg=t.arg.substring(0,t.maxWidth)),t.padZeros?t.arg=u_(t.arg,t.width||t.precision,t.padRight):t.width&&(t.arg=a_(t.arg,t.width,t.padRight)),v+=t.arg||"",n+=1}return v}L3.exports=o_});var d3=s((FU,P3)=>{"use strict";var f_=H3();P3.exports=f_});var R3=s((yU,G3)=>{"use strict";var Te=/%(?:([1-9]\d*)\$)?([0 +\-#]*)(\*|\d+)?(?:(\.)(\*|\d+)?)?[hlL]?([%A-Za-z])/g;function l_(r){var e={mapping:r[1]?parseInt(r[1],10):void 0,flags:r[2],width:r[3],precision:r[5],specifier:r[6]};return r[4]==="."&&r[5]===void 0&&(e.precision="1"),e}function c_(r){var e,i,t,u;for(i=[],u=0,t=Te.exec(r);t;)e=r.slice(u,Te.lastIndex-t[0].length),e.length&&i.push(e),t[6]==="%"?i.push("%"):i.push(l_(t)),u=Te.lastIndex,t=Te.exec(r);return e=r.slice(u),e.length&&i.push(e),i}G3.exports=c_});var W3=s((wU,M3)=>{"use strict";var p_=R3();M3.exports=p_});var D3=s((LU,C3)=>{"use strict";function q_(r){return typeof r=="string"}C3.exports=q_});var U3=s((HU,X3)=>{"use strict";var m_=d3(),I_=W3(),__=D3();function B3(r){var e,i;if(!__(r))throw new TypeError(B3("invalid argument. First argument must be a string. Value: `%s`.",r));for(e=[I_(r)],i=1;i<arguments.length;i++)e.push(arguments[i]);return m_.apply(null,e)}X3.exports=B3});var k3=s((PU,V3)=>{"use strict";var N_=U3();V3.exports=N_});var $3=s((dU,Z3)=>{"use strict";var b3=k3(),gr=Object.prototype,K3=gr.toString,Q3=gr.__defineGetter__,Y3=gr.__defineSetter__,A_=gr.__lookupGetter__,g_=gr.__lookupSetter__;function S_(r,e,i){var t,u,a,v;if(typeof r!="object"||r===null||K3.call(r)==="[object Array]")throw new TypeError(b3("invalid argument. First argument must be an object. Value: `%s`.",r));if(typeof i!="object"||i===null||K3.call(i)==="[object Array]")throw new TypeError(b3("invalid argument. Property descriptor must be an object. Value: `%s`.",i));if(u="value"in i,u&&(A_.call(r,e)||g_.call(r,e)?(t=r.__proto__,r.__proto__=gr,delete r[e],r[e]=i.value,r.__proto__=t):r[e]=i.value),a="get"in i,v="set"in i,u&&(a||v))throw new Error("invalid argument. Cannot specify one or more accessors and a value or writable attribute in the property descriptor.");return a&&Q3&&Q3.call(r,e,i.get),v&&Y3&&Y3.call(r,e,i.set),r}Z3.exports=S_});var j3=s((GU,J3)=>{"use strict";var E_=l3(),O_=p3(),h_=$3(),k1;E_()?k1=O_:k1=h_;J3.exports=k1});var x3=s((RU,z3)=>{"use strict";var T_=j3();function F_(r,e,i){T_(r,e,{configurable:!1,enumerable:!1,writable:!1,value:i})}z3.exports=F_});var Cr=s((MU,rt)=>{"use strict";var y_=x3();rt.exports=y_});var it=s((WU,et)=>{"use strict";function w_(r){return r!==r}et.exports=w_});var P=s((CU,tt)=>{"use strict";var L_=it();tt.exports=L_});var ut=s((DU,at)=>{"use strict";function H_(){return typeof Symbol=="function"&&typeof Symbol("foo")=="symbol"}at.exports=H_});var vt=s((BU,st)=>{"use strict";var P_=ut();st.exports=P_});var ot=s((XU,nt)=>{"use strict";var d_=vt(),G_=d_();function R_(){return G_&&typeof Symbol.toStringTag=="symbol"}nt.exports=R_});var lt=s((UU,ft)=>{"use strict";var M_=ot();ft.exports=M_});var b1=s((VU,ct)=>{"use strict";var W_=Object.prototype.toString;ct.exports=W_});var qt=s((kU,pt)=>{"use strict";var C_=b1();function D_(r){return C_.call(r)}pt.exports=D_});var It=s((bU,mt)=>{"use strict";var B_=Object.prototype.hasOwnProperty;function X_(r,e){return r==null?!1:B_.call(r,e)}mt.exports=X_});var Nt=s((KU,_t)=>{"use strict";var U_=It();_t.exports=U_});var gt=s((QU,At)=>{"use strict";var V_=typeof Symbol=="function"?Symbol:void 0;At.exports=V_});var Et=s((YU,St)=>{"use strict";var k_=gt();St.exports=k_});var Tt=s((ZU,ht)=>{"use strict";var Ot=Et(),b_=typeof Ot=="function"?Ot.toStringTag:"";ht.exports=b_});var yt=s(($U,Ft)=>{"use strict";var K_=Nt(),Dr=Tt(),K1=b1();function Q_(r){var e,i,t;if(r==null)return K1.call(r);i=r[Dr],e=K_(r,Dr);try{r[Dr]=void 0}catch{return K1.call(r)}return t=K1.call(r),e?r[Dr]=i:delete r[Dr],t}Ft.exports=Q_});var Br=s((JU,wt)=>{"use strict";var Y_=lt(),Z_=qt(),$_=yt(),Q1;Y_()?Q1=$_:Q1=Z_;wt.exports=Q1});var Ht=s((jU,Lt)=>{"use strict";var J_=Br(),j_=typeof Uint32Array=="function";function z_(r){return j_&&r instanceof Uint32Array||J_(r)==="[object Uint32Array]"}Lt.exports=z_});var dt=s((zU,Pt)=>{"use strict";var x_=Ht();Pt.exports=x_});var Rt=s((xU,Gt)=>{"use strict";var rN=4294967295;Gt.exports=rN});var Wt=s((rV,Mt)=>{"use strict";var eN=typeof Uint32Array=="function"?Uint32Array:null;Mt.exports=eN});var Bt=s((eV,Dt)=>{"use strict";var iN=dt(),Y1=Rt(),Ct=Wt();function tN(){var r,e;if(typeof Ct!="function")return!1;try{e=[1,3.14,-3.14,Y1+1,Y1+2],e=new Ct(e),r=iN(e)&&e[0]===1&&e[1]===3&&e[2]===Y1-2&&e[3]===0&&e[4]===1}catch{r=!1}return r}Dt.exports=tN});var Ut=s((iV,Xt)=>{"use strict";var aN=Bt();Xt.exports=aN});var kt=s((tV,Vt)=>{"use strict";var uN=typeof Uint32Array=="function"?Uint32Array:void 0;Vt.exports=uN});var Kt=s((aV,bt)=>{"use strict";function sN(){throw new Error("not implemented")}bt.exports=sN});var nr=s((uV,Qt)=>{"use strict";var vN=Ut(),nN=kt(),oN=Kt(),Z1;vN()?Z1=nN:Z1=oN;Qt.exports=Z1});var Zt=s((sV,Yt)=>{"use strict";var fN=Br(),lN=typeof Float64Array=="function";function cN(r){return lN&&r instanceof Float64Array||fN(r)==="[object Float64Array]"}Yt.exports=cN});var Jt=s((vV,$t)=>{"use strict";var pN=Zt();$t.exports=pN});var zt=s((nV,jt)=>{"use strict";var qN=typeof Float64Array=="function"?Float64Array:null;jt.exports=qN});var ea=s((oV,ra)=>{"use strict";var mN=Jt(),xt=zt();function IN(){var r,e;if(typeof xt!="function")return!1;try{e=new xt([1,3.14,-3.14,NaN]),r=mN(e)&&e[0]===1&&e[1]===3.14&&e[2]===-3.14&&e[3]!==e[3]}catch{r=!1}return r}ra.exports=IN});var ta=s((fV,ia)=>{"use strict";var _N=ea();ia.exports=_N});var ua=s((lV,aa)=>{"use strict";var NN=typeof Float64Array=="function"?Float64Array:void 0;aa.exports=NN});var va=s((cV,sa)=>{"use strict";function AN(){throw new Error("not implemented")}sa.exports=AN});var or=s((pV,na)=>{"use strict";var gN=ta(),SN=ua(),EN=va(),$1;gN()?$1=SN:$1=EN;na.exports=$1});var fa=s((qV,oa)=>{"use strict";var ON=Br(),hN=typeof Uint8Array=="function";function TN(r){return hN&&r instanceof Uint8Array||ON(r)==="[object Uint8Array]"}oa.exports=TN});var ca=s((mV,la)=>{"use strict";var FN=fa();la.exports=FN});var qa=s((IV,pa)=>{"use strict";var yN=255;pa.exports=yN});var Ia=s((_V,ma)=>{"use strict";var wN=typeof Uint8Array=="function"?Uint8Array:null;ma.exports=wN});var Aa=s((NV,Na)=>{"use strict";var LN=ca(),J1=qa(),_a=Ia();function HN(){var r,e;if(typeof _a!="function")return!1;try{e=[1,3.14,-3.14,J1+1,J1+2],e=new _a(e),r=LN(e)&&e[0]===1&&e[1]===3&&e[2]===J1-2&&e[3]===0&&e[4]===1}catch{r=!1}return r}Na.exports=HN});var Sa=s((AV,ga)=>{"use strict";var PN=Aa();ga.exports=PN});var Oa=s((gV,Ea)=>{"use strict";var dN=typeof Uint8Array=="function"?Uint8Array:void 0;Ea.exports=dN});var Ta=s((SV,ha)=>{"use strict";function GN(){throw new Error("not implemented")}ha.exports=GN});var ya=s((EV,Fa)=>{"use strict";var RN=Sa(),MN=Oa(),WN=Ta(),j1;RN()?j1=MN:j1=WN;Fa.exports=j1});var La=s((OV,wa)=>{"use strict";var CN=Br(),DN=typeof Uint16Array=="function";function BN(r){return DN&&r instanceof Uint16Array||CN(r)==="[object Uint16Array]"}wa.exports=BN});var Pa=s((hV,Ha)=>{"use strict";var XN=La();Ha.exports=XN});var Ga=s((TV,da)=>{"use strict";var UN=65535;da.exports=UN});var Ma=s((FV,Ra)=>{"use strict";var VN=typeof Uint16Array=="function"?Uint16Array:null;Ra.exports=VN});var Da=s((yV,Ca)=>{"use strict";var kN=Pa(),z1=Ga(),Wa=Ma();function bN(){var r,e;if(typeof Wa!="function")return!1;try{e=[1,3.14,-3.14,z1+1,z1+2],e=new Wa(e),r=kN(e)&&e[0]===1&&e[1]===3&&e[2]===z1-2&&e[3]===0&&e[4]===1}catch{r=!1}return r}Ca.exports=bN});var Xa=s((wV,Ba)=>{"use strict";var KN=Da();Ba.exports=KN});var Va=s((LV,Ua)=>{"use strict";var QN=typeof Uint16Array=="function"?Uint16Array:void 0;Ua.exports=QN});var ba=s((HV,ka)=>{"use strict";function YN(){throw new Error("not implemented")}ka.exports=YN});var Qa=s((PV,Ka)=>{"use strict";var ZN=Xa(),$N=Va(),JN=ba(),x1;ZN()?x1=$N:x1=JN;Ka.exports=x1});var Za=s((dV,Ya)=>{"use strict";var jN=ya(),zN=Qa(),xN={uint16:zN,uint8:jN};Ya.exports=xN});var za=s((GV,ja)=>{"use strict";var $a=Za(),Ja;function rA(){var r,e;return r=new $a.uint16(1),r[0]=4660,e=new $a.uint8(r.buffer),e[0]===52}Ja=rA();ja.exports=Ja});var fr=s((RV,xa)=>{"use strict";var eA=za();xa.exports=eA});var e6=s((MV,r6)=>{"use strict";var iA=fr(),ri;iA===!0?ri=1:ri=0;r6.exports=ri});var a6=s((WV,t6)=>{"use strict";var tA=nr(),aA=or(),uA=e6(),i6=new aA(1),sA=new tA(i6.buffer);function vA(r){return i6[0]=r,sA[uA]}t6.exports=vA});var X=s((CV,u6)=>{"use strict";var nA=a6();u6.exports=nA});var v6=s((DV,s6)=>{"use strict";var oA=fr(),ei;oA===!0?ei=1:ei=0;s6.exports=ei});var o6=s((BV,n6)=>{"use strict";var fA=nr(),lA=or(),cA=v6(),ii=new lA(1),pA=new fA(ii.buffer);function qA(r,e){return ii[0]=r,pA[cA]=e>>>0,ii[0]}n6.exports=qA});var X0=s((XV,f6)=>{"use strict";var mA=o6();f6.exports=mA});var p6=s((UV,c6)=>{"use strict";var IA=fr(),l6,ti,ai;IA===!0?(ti=1,ai=0):(ti=0,ai=1);l6={HIGH:ti,LOW:ai};c6.exports=l6});var N6=s((VV,_6)=>{"use strict";var _A=nr(),NA=or(),m6=p6(),I6=new NA(1),q6=new _A(I6.buffer),AA=m6.HIGH,gA=m6.LOW;function SA(r,e){return q6[AA]=r,q6[gA]=e,I6[0]}_6.exports=SA});var Sr=s((kV,A6)=>{"use strict";var EA=N6();A6.exports=EA});var M=s((bV,g6)=>{"use strict";var OA=Number.POSITIVE_INFINITY;g6.exports=OA});var E6=s((KV,S6)=>{"use strict";S6.exports=Number});var h6=s((QV,O6)=>{"use strict";var hA=E6();O6.exports=hA});var V=s((YV,T6)=>{"use strict";var TA=h6(),FA=TA.NEGATIVE_INFINITY;T6.exports=FA});var m0=s((ZV,F6)=>{"use strict";var yA=1023;F6.exports=yA});var w6=s(($V,y6)=>{"use strict";var wA=.34657359027997264;y6.exports=wA});var H6=s((JV,L6)=>{"use strict";function LA(r){return r===0?-.03333333333333313:-.03333333333333313+r*(.0015873015872548146+r*(-793650757867488e-19+r*(4008217827329362e-21+r*-20109921818362437e-23)))}L6.exports=LA});var W6=s((jV,M6)=>{"use strict";var HA=P(),P6=X(),ui=X0(),PA=Sr(),d6=M(),dA=V(),G6=m0(),GA=w6(),RA=H6(),MA=709.782712893384,si=.6931471803691238,vi=19082149292705877e-26,R6=1.4426950408889634,WA=38.816242111356935,CA=1.0397207708399179;function DA(r){var e,i,t,u,a,v,n,o,c,f,l,q,p;if(r===d6||HA(r))return r;if(r===dA)return-1;if(r===0)return r;if(r<0?(t=!0,o=-r):(t=!1,o=r),o>=WA){if(t)return-1;if(o>=MA)return d6}if(v=P6(o)|0,o>GA)o<CA?t?(u=r+si,a=-vi,p=-1):(u=r-si,a=vi,p=1):(t?p=R6*r-.5:p=R6*r+.5,p|=0,l=p,u=r-l*si,a=l*vi),r=u-a,f=u-r-a;else{if(v<1016070144)return r;p=0}return e=.5*r,c=r*e,n=1+c*RA(c),l=3-n*e,q=c*((n-l)/(6-r*l)),p===0?r-(r*q-c):(i=PA(G6+p<<20,0),q=r*(q-f)-f,q-=c,p===-1?.5*(r-q)-.5:p===1?r<-.25?-2*(q-(r+.5)):1+2*(r-q):p<=-2||p>56?(o=1-(q-r),p===1024?(u=P6(o)+(p<<20)|0,o=ui(o,u)):o*=i,o-1):(l=1,p<20?(u=1072693248-(2097152>>p)|0,l=ui(l,u),o=l-(q-r)):(u=G6-p<<20|0,l=ui(l,u),o=r-(q+l),o+=1),o*=i,o))}M6.exports=DA});var U0=s((zV,C6)=>{"use strict";var BA=W6();C6.exports=BA});var B6=s((xV,D6)=>{"use strict";var XA=Math.floor;D6.exports=XA});var j=s((rk,X6)=>{"use strict";var UA=B6();X6.exports=UA});var V6=s((ek,U6)=>{"use strict";function VA(r){return r===0?.6666666666666735:.6666666666666735+r*(.3999999999940942+r*(.2857142874366239+r*(.22222198432149784+r*(.1818357216161805+r*(.15313837699209373+r*.14798198605116586)))))}U6.exports=VA});var Y6=s((ik,Q6)=>{"use strict";var kA=P(),k6=X(),b6=X0(),bA=M(),KA=V(),K6=m0(),QA=V6(),ni=.6931471803691238,oi=19082149292705877e-26,YA=.41421356237309503,ZA=-.2928932188134525,$A=1862645149230957e-24,JA=5551115123125783e-32,jA=9007199254740992,zA=.6666666666666666;function xA(r){var e,i,t,u,a,v,n,o,c,f;if(r<-1||kA(r))return NaN;if(r===-1)return KA;if(r===bA||r===0)return r;if(r<0?t=-r:t=r,f=1,t<YA){if(t<$A)return t<JA?r:r-r*r*.5;r>ZA&&(f=0,u=r,i=1)}return f!==0&&(t<jA?(c=1+r,i=k6(c),f=(i>>20)-K6,f>0?a=1-(c-r):a=r-(c-1),a/=c):(c=r,i=k6(c),f=(i>>20)-K6,a=0),i&=1048575,i<434334?c=b6(c,i|1072693248):(f+=1,c=b6(c,i|1071644672),i=1048576-i>>2),u=c-1),e=.5*u*u,i===0?u===0?(a+=f*oi,f*ni+a):(o=e*(1-zA*u),f*ni-(o-(f*oi+a)-u)):(v=u/(2+u),n=v*v,o=n*QA(n),f===0?u-(e-v*(e+o)):f*ni-(e-(v*(e+o)+(f*oi+a))-u))}Q6.exports=xA});var i0=s((tk,Z6)=>{"use strict";var rg=Y6();Z6.exports=rg});var J6=s((ak,$6)=>{"use strict";var eg=Math.sqrt;$6.exports=eg});var W=s((uk,j6)=>{"use strict";var ig=J6();j6.exports=ig});var fi=s((sk,z6)=>{"use strict";var tg=.7853981633974483;z6.exports=tg});var r4=s((vk,x6)=>{"use strict";function ag(r){var e,i,t;return r===0?.16666666666666713:(r<0?e=-r:e=r,e<=1?(i=-8.198089802484825+r*(19.562619833175948+r*(-16.262479672107002+r*(5.444622390564711+r*(-.6019598008014124+r*.004253011369004428)))),t=-49.18853881490881+r*(139.51056146574857+r*(-147.1791292232726+r*(70.49610280856842+r*(-14.740913729888538+r*1))))):(r=1/r,i=.004253011369004428+r*(-.6019598008014124+r*(5.444622390564711+r*(-16.262479672107002+r*(19.562619833175948+r*-8.198089802484825)))),t=1+r*(-14.740913729888538+r*(70.49610280856842+r*(-147.1791292232726+r*(139.51056146574857+r*-49.18853881490881))))),i/t)}x6.exports=ag});var i4=s((nk,e4)=>{"use strict";function ug(r){var e,i,t;return r===0?.08333333333333809:(r<0?e=-r:e=r,e<=1?(i=28.536655482610616+r*(-25.56901049652825+r*(6.968710824104713+r*(-.5634242780008963+r*.002967721961301243))),t=342.43986579130785+r*(-383.8770957603691+r*(147.0656354026815+r*(-21.947795316429207+r*1)))):(r=1/r,i=.002967721961301243+r*(-.5634242780008963+r*(6.968710824104713+r*(-25.56901049652825+r*28.536655482610616))),t=1+r*(-21.947795316429207+r*(147.0656354026815+r*(-383.8770957603691+r*342.43986579130785)))),i/t)}e4.exports=ug});var u4=s((ok,a4)=>{"use strict";var sg=P(),vg=W(),t4=fi(),ng=r4(),og=i4(),fg=6123233995736766e-32;function lg(r){var e,i,t,u,a;if(sg(r))return NaN;if(r>0?t=r:(e=!0,t=-r),t>1)return NaN;if(t>.625)i=1-t,u=i*og(i),i=vg(i+i),a=t4-i,i=i*u-fg,a-=i,a+=t4;else{if(t<1e-8)return r;i=t*t,a=i*ng(i),a=t*a+t}return e?-a:a}a4.exports=lg});var Fe=s((fk,s4)=>{"use strict";var cg=u4();s4.exports=cg});var n4=s((lk,v4)=>{"use strict";function pg(r){return Math.abs(r)}v4.exports=pg});var y=s((ck,o4)=>{"use strict";var qg=n4();o4.exports=qg});var l4=s((pk,f4)=>{"use strict";var mg=Math.ceil;f4.exports=mg});var p4=s((qk,c4)=>{"use strict";var Ig=l4();c4.exports=Ig});var m4=s((mk,q4)=>{"use strict";var _g=j(),Ng=p4();function Ag(r){return r<0?Ng(r):_g(r)}q4.exports=Ag});var Xr=s((Ik,I4)=>{"use strict";var gg=m4();I4.exports=gg});var N4=s((_k,_4)=>{"use strict";var Sg=1023;_4.exports=Sg});var g4=s((Nk,A4)=>{"use strict";var Eg=-1023;A4.exports=Eg});var E4=s((Ak,S4)=>{"use strict";var Og=-1074;S4.exports=Og});var h4=s((gk,O4)=>{"use strict";var hg=M(),Tg=V();function Fg(r){return r===hg||r===Tg}O4.exports=Fg});var I0=s((Sk,T4)=>{"use strict";var yg=h4();T4.exports=yg});var y4=s((Ek,F4)=>{"use strict";var wg=2147483648;F4.exports=wg});var x=s((Ok,w4)=>{"use strict";var Lg=2147483647;w4.exports=Lg});var P4=s((hk,H4)=>{"use strict";var Hg=fr(),L4,li,ci;Hg===!0?(li=1,ci=0):(li=0,ci=1);L4={HIGH:li,LOW:ci};H4.exports=L4});var pi=s((Tk,M4)=>{"use strict";var Pg=nr(),dg=or(),G4=P4(),R4=new dg(1),d4=new Pg(R4.buffer),Gg=G4.HIGH,Rg=G4.LOW;function Mg(r,e,i,t){return R4[0]=r,e[t]=d4[Gg],e[t+i]=d4[Rg],e}M4.exports=Mg});var C4=s((Fk,W4)=>{"use strict";var Wg=pi();function Cg(r){return Wg(r,[0,0],1,0)}W4.exports=Cg});var Ur=s((yk,B4)=>{"use strict";var Dg=Cr(),D4=C4(),Bg=pi();Dg(D4,"assign",Bg);B4.exports=D4});var U4=s((wk,X4)=>{"use strict";var Xg=y4(),Ug=x(),Vg=Ur(),kg=X(),bg=Sr(),qi=[0,0];function Kg(r,e){var i,t;return Vg.assign(r,qi,1,0),i=qi[0],i&=Ug,t=kg(e),t&=Xg,i|=t,bg(i,qi[1])}X4.exports=Kg});var Er=s((Lk,V4)=>{"use strict";var Qg=U4();V4.exports=Qg});var V0=s((Hk,k4)=>{"use strict";var Yg=22250738585072014e-324;k4.exports=Yg});var mi=s((Pk,b4)=>{"use strict";var Zg=V0(),$g=I0(),Jg=P(),jg=y(),zg=4503599627370496;function xg(r,e,i,t){return Jg(r)||$g(r)?(e[t]=r,e[t+i]=0,e):r!==0&&jg(r)<Zg?(e[t]=r*zg,e[t+i]=-52,e):(e[t]=r,e[t+i]=0,e)}b4.exports=xg});var Q4=s((dk,K4)=>{"use strict";var rS=mi();function eS(r){return rS(r,[0,0],1,0)}K4.exports=eS});var $4=s((Gk,Z4)=>{"use strict";var iS=Cr(),Y4=Q4(),tS=mi();iS(Y4,"assign",tS);Z4.exports=Y4});var lr=s((Rk,J4)=>{"use strict";var aS=2146435072;J4.exports=aS});var z4=s((Mk,j4)=>{"use strict";var uS=X(),sS=lr(),vS=m0();function nS(r){var e=uS(r);return e=(e&sS)>>>20,e-vS|0}j4.exports=nS});var r5=s((Wk,x4)=>{"use strict";var oS=z4();x4.exports=oS});var i5=s((Ck,e5)=>{"use strict";var fS=M(),lS=V(),cS=m0(),pS=N4(),qS=g4(),mS=E4(),IS=P(),_S=I0(),NS=Er(),AS=$4().assign,gS=r5(),SS=Ur(),ES=Sr(),OS=2220446049250313e-31,hS=2148532223,Ii=[0,0],_i=[0,0];function TS(r,e){var i,t;return e===0||r===0||IS(r)||_S(r)?r:(AS(r,Ii,1,0),r=Ii[0],e+=Ii[1],e+=gS(r),e<mS?NS(0,r):e>pS?r<0?lS:fS:(e<=qS?(e+=52,t=OS):t=1,SS.assign(r,_i,1,0),i=_i[0],i&=hS,i|=e+cS<<20,t*ES(i,_i[1])))}e5.exports=TS});var w0=s((Dk,t5)=>{"use strict";var FS=i5();t5.exports=FS});var u5=s((Bk,a5)=>{"use strict";function yS(r){return r===0?.16666666666666602:.16666666666666602+r*(-.0027777777777015593+r*(6613756321437934e-20+r*(-16533902205465252e-22+r*41381367970572385e-24)))}a5.exports=yS});var v5=s((Xk,s5)=>{"use strict";var wS=w0(),LS=u5();function HS(r,e,i){var t,u,a,v;return t=r-e,u=t*t,a=t-u*LS(u),v=1-(e-t*a/(2-a)-r),wS(v,i)}s5.exports=HS});var p5=s((Uk,c5)=>{"use strict";var PS=P(),n5=Xr(),dS=V(),o5=M(),GS=v5(),RS=.6931471803691238,MS=19082149292705877e-26,f5=1.4426950408889634,WS=709.782712893384,CS=-745.1332191019411,l5=1/(1<<28),DS=-l5;function BS(r){var e,i,t;return PS(r)||r===o5?r:r===dS?0:r>WS?o5:r<CS?0:r>DS&&r<l5?1+r:(r<0?t=n5(f5*r-.5):t=n5(f5*r+.5),e=r-t*RS,i=t*MS,GS(e,i,t))}c5.exports=BS});var d=s((Vk,q5)=>{"use strict";var XS=p5();q5.exports=XS});var I5=s((kk,m5)=>{"use strict";var US=j();function VS(r){return US(r)===r}m5.exports=VS});var L0=s((bk,_5)=>{"use strict";var kS=I5();_5.exports=kS});var A5=s((Kk,N5)=>{"use strict";var bS=L0();function KS(r){return bS(r/2)}N5.exports=KS});var Ni=s((Qk,g5)=>{"use strict";var QS=A5();g5.exports=QS});var O5=s((Yk,E5)=>{"use strict";var S5=Ni();function YS(r){return r>0?S5(r-1):S5(r+1)}E5.exports=YS});var ye=s((Zk,h5)=>{"use strict";var ZS=O5();h5.exports=ZS});var F5=s(($k,T5)=>{"use strict";var $S=fr(),Ai;$S===!0?Ai=0:Ai=1;T5.exports=Ai});var w5=s((Jk,y5)=>{"use strict";var JS=nr(),jS=or(),zS=F5(),gi=new jS(1),xS=new JS(gi.buffer);function rE(r,e){return gi[0]=r,xS[zS]=e>>>0,gi[0]}y5.exports=rE});var _0=s((jk,L5)=>{"use strict";var eE=w5();L5.exports=eE});var P5=s((zk,H5)=>{"use strict";function iE(r){return r|0}H5.exports=iE});var Vr=s((xk,d5)=>{"use strict";var tE=P5();d5.exports=tE});var M5=s((rb,R5)=>{"use strict";var G5=ye(),aE=Er(),uE=V(),we=M();function sE(r,e){return e===uE?we:e===we?0:e>0?G5(e)?r:0:G5(e)?aE(we,r):we}R5.exports=sE});var C5=s((eb,W5)=>{"use strict";var vE=x(),nE=X(),oE=1072693247,Le=1e300,He=1e-300;function fE(r,e){var i,t;return t=nE(r),i=t&vE,i<=oE?e<0?Le*Le:He*He:e>0?Le*Le:He*He}W5.exports=fE});var X5=s((ib,B5)=>{"use strict";var lE=y(),D5=M();function cE(r,e){return r===-1?(r-r)/(r-r):r===1?1:lE(r)<1==(e===D5)?0:D5}B5.exports=cE});var Si=s((tb,U5)=>{"use strict";var pE=20;U5.exports=pE});var k5=s((ab,V5)=>{"use strict";function qE(r){return r===0?.5999999999999946:.5999999999999946+r*(.4285714285785502+r*(.33333332981837743+r*(.272728123808534+r*(.23066074577556175+r*.20697501780033842))))}V5.exports=qE});var Y5=s((ub,Q5)=>{"use strict";var mE=X(),Pe=_0(),b5=X0(),IE=m0(),_E=Si(),NE=k5(),AE=1048575,K5=1048576,gE=1072693248,SE=536870912,EE=524288,OE=9007199254740992,hE=.9617966939259756,TE=.9617967009544373,FE=-7028461650952758e-24,yE=[1,1.5],wE=[0,.5849624872207642],LE=[0,1350039202129749e-23];function HE(r,e,i){var t,u,a,v,n,o,c,f,l,q,p,m,_,N,I,O,A,h,S,T,g,F;return T=0,i<K5&&(e*=OE,T-=53,i=mE(e)),T+=(i>>_E)-IE|0,g=i&AE|0,i=g|gE|0,g<=235662?F=0:g<767610?F=1:(F=0,T+=1,i-=K5),e=b5(e,i),f=yE[F],h=e-f,S=1/(e+f),u=h*S,v=Pe(u,0),t=(i>>1|SE)+EE,t+=F<<18,o=b5(0,t),c=e-(o-f),n=S*(h-v*o-v*c),a=u*u,A=a*a*NE(a),A+=n*(v+u),a=v*v,o=3+a+A,o=Pe(o,0),c=A-(o-3-a),h=v*o,S=n*o+c*u,q=h+S,q=Pe(q,0),p=S-(q-h),m=TE*q,_=FE*q+p*hE+LE[F],l=wE[F],O=T,N=m+_+l+O,N=Pe(N,0),I=_-(N-O-l-m),r[0]=N,r[1]=I,r}Q5.exports=HE});var $5=s((sb,Z5)=>{"use strict";function PE(r){return r===0?.5:.5+r*(-.3333333333333333+r*.25)}Z5.exports=PE});var j5=s((vb,J5)=>{"use strict";var dE=_0(),GE=$5(),RE=1.4426950408889634,ME=1.4426950216293335,WE=19259629911266175e-24;function CE(r,e){var i,t,u,a,v,n;return u=e-1,a=u*u*GE(u),v=ME*u,n=u*WE-a*RE,t=v+n,t=dE(t,0),i=n-(t-v),r[0]=t,r[1]=i,r}J5.exports=CE});var Ei=s((nb,z5)=>{"use strict";var DE=.6931471805599453;z5.exports=DE});var kr=s((ob,x5)=>{"use strict";var BE=1048575;x5.exports=BE});var e7=s((fb,r7)=>{"use strict";function XE(r){return r===0?.16666666666666602:.16666666666666602+r*(-.0027777777777015593+r*(6613756321437934e-20+r*(-16533902205465252e-22+r*41381367970572385e-24)))}r7.exports=XE});var n7=s((lb,v7)=>{"use strict";var UE=X(),i7=X0(),VE=_0(),kE=Vr(),bE=w0(),KE=Ei(),t7=m0(),a7=x(),u7=kr(),br=Si(),QE=e7(),s7=1048576,YE=1071644672,ZE=.6931471824645996,$E=-1904654299957768e-24;function JE(r,e,i){var t,u,a,v,n,o,c,f,l,q,p;return q=r&a7|0,p=(q>>br)-t7|0,l=0,q>YE&&(l=r+(s7>>p+1)>>>0,p=((l&a7)>>br)-t7|0,t=(l&~(u7>>p))>>>0,a=i7(0,t),l=(l&u7|s7)>>br-p>>>0,r<0&&(l=-l),e-=a),a=i+e,a=VE(a,0),n=a*ZE,o=(i-(a-e))*KE+a*$E,f=n+o,c=o-(f-n),a=f*f,u=f-a*QE(a),v=f*u/(u-2)-(c+f*c),f=1-(v-f),r=UE(f),r=kE(r),r+=l<<br>>>0,r>>br<=0?f=bE(f,l):f=i7(f,r),f}v7.exports=JE});var A7=s((cb,N7)=>{"use strict";var o7=P(),f7=ye(),l7=I0(),jE=L0(),c7=W(),zE=y(),Oi=Ur(),xE=_0(),p7=Vr(),rO=V(),eO=M(),hi=x(),iO=M5(),tO=C5(),aO=X5(),uO=Y5(),sO=j5(),vO=n7(),nO=1072693247,oO=1105199104,fO=1139802112,q7=1083179008,lO=1072693248,cO=1083231232,pO=3230714880,m7=31,k0=1e300,b0=1e-300,qO=8008566259537294e-32,H0=[0,0],I7=[0,0];function _7(r,e){var i,t,u,a,v,n,o,c,f,l,q,p,m,_,N,I;if(o7(r)||o7(e))return NaN;if(Oi.assign(e,H0,1,0),n=H0[0],o=H0[1],o===0){if(e===0)return 1;if(e===1)return r;if(e===-1)return 1/r;if(e===.5)return c7(r);if(e===-.5)return 1/c7(r);if(e===2)return r*r;if(e===3)return r*r*r;if(e===4)return r*=r,r*r;if(l7(e))return aO(r,e)}if(Oi.assign(r,H0,1,0),a=H0[0],v=H0[1],v===0){if(a===0)return iO(r,e);if(r===1)return 1;if(r===-1&&f7(e))return-1;if(l7(r))return r===rO?_7(-0,-e):e<0?0:eO}if(r<0&&jE(e)===!1)return(r-r)/(r-r);if(u=zE(r),i=a&hi|0,t=n&hi|0,c=a>>>m7|0,f=n>>>m7|0,c&&f7(e)?c=-1:c=1,t>oO){if(t>fO)return tO(r,e);if(i<nO)return f===1?c*k0*k0:c*b0*b0;if(i>lO)return f===0?c*k0*k0:c*b0*b0;m=sO(I7,u)}else m=uO(I7,u,i);if(l=xE(e,0),p=(e-l)*m[0]+e*m[1],q=l*m[0],_=p+q,Oi.assign(_,H0,1,0),N=p7(H0[0]),I=p7(H0[1]),N>=q7){if((N-q7|I)!==0||p+qO>_-q)return c*k0*k0}else if((N&hi)>=cO&&((N-pO|I)!==0||p<=_-q))return c*b0*b0;return _=vO(N,q,p),c*_}N7.exports=_7});var D=s((pb,g7)=>{"use strict";var mO=A7();g7.exports=mO});var K0=s((qb,S7)=>{"use strict";var IO=2.718281828459045;S7.exports=IO});var t0=s((mb,E7)=>{"use strict";var _O=2220446049250313e-31;E7.exports=_O});var h7=s((Ib,O7)=>{"use strict";function NO(r){var e,i,t;return r===0?1/0:(r<0?e=-r:e=r,e<=1?(i=709811.662581658+r*(679979.8474157227+r*(293136.7857211597+r*(74887.54032914672+r*(12555.290582413863+r*(1443.4299244417066+r*(115.24194596137347+r*(6.309239205732627+r*(.22668404630224365+r*(.004826466289237662+r*4624429436045379e-20))))))))),t=0+r*(362880+r*(1026576+r*(1172700+r*(723680+r*(269325+r*(63273+r*(9450+r*(870+r*(45+r*1)))))))))):(r=1/r,i=4624429436045379e-20+r*(.004826466289237662+r*(.22668404630224365+r*(6.309239205732627+r*(115.24194596137347+r*(1443.4299244417066+r*(12555.290582413863+r*(74887.54032914672+r*(293136.7857211597+r*(679979.8474157227+r*709811.662581658))))))))),t=1+r*(45+r*(870+r*(9450+r*(63273+r*(269325+r*(723680+r*(1172700+r*(1026576+r*(362880+r*0)))))))))),i/t)}O7.exports=NO});var y7=s((_b,F7)=>{"use strict";var T7=P(),AO=i0(),gO=W(),SO=y(),EO=d(),Ti=D(),OO=K0(),Fi=t0(),yi=h7(),wi=10.900511;function hO(r,e){var i,t,u,a,v,n,o;return T7(r)||T7(e)?NaN:r<0||e<0?NaN:e===1?1/r:r===1?1/e:(o=r+e,o<Fi?(v=o/r,v/=e,v):o===r&&e<Fi?1/e:o===e&&r<Fi?1/r:(r<e&&(n=e,e=r,r=n),t=r+wi-.5,u=e+wi-.5,a=o+wi-.5,v=yi(r)*(yi(e)/yi(o)),i=r-.5-e,SO(e*i)<a*100&&r>100?v*=EO(i*AO(-e/a)):v*=Ti(t/a,i),a>1e10?v*=Ti(t/a*(u/a),e):v*=Ti(t*u/(a*a),e),v*=gO(OO/u),v))}F7.exports=hO});var Li=s((Nb,w7)=>{"use strict";var TO=y7();w7.exports=TO});var H7=s((Ab,L7)=>{"use strict";var FO=M();function yO(r){return r===0&&1/r===FO}L7.exports=yO});var d7=s((gb,P7)=>{"use strict";var wO=H7();P7.exports=wO});var M7=s((Sb,R7)=>{"use strict";var LO=d7(),G7=P(),Hi=M();function HO(r,e){return G7(r)||G7(e)?NaN:r===Hi||e===Hi?Hi:r===e&&r===0?LO(r)?r:e:r>e?r:e}R7.exports=HO});var Q0=s((Eb,W7)=>{"use strict";var PO=M7();W7.exports=PO});var D7=s((Ob,C7)=>{"use strict";var dO=V();function GO(r){return r===0&&1/r===dO}C7.exports=GO});var de=s((hb,B7)=>{"use strict";var RO=D7();B7.exports=RO});var V7=s((Tb,U7)=>{"use strict";var MO=de(),X7=P(),Pi=V();function WO(r,e){return X7(r)||X7(e)?NaN:r===Pi||e===Pi?Pi:r===e&&r===0?MO(r)?r:e:r<e?r:e}U7.exports=WO});var P0=s((Fb,k7)=>{"use strict";var CO=V7();k7.exports=CO});var d0=s((yb,b7)=>{"use strict";var DO=17976931348623157e292;b7.exports=DO});var di=s((wb,K7)=>{"use strict";var BO=2147483647;K7.exports=BO});var Ge=s((Lb,Q7)=>{"use strict";var XO=1.5707963267948966;Q7.exports=XO});var r0=s((Hb,Y7)=>{"use strict";var UO=3.141592653589793;Y7.exports=UO});var $7=s((Pb,Z7)=>{"use strict";function VO(r){return r===0?.0416666666666666:.0416666666666666+r*(-.001388888888887411+r*2480158728947673e-20)}Z7.exports=VO});var j7=s((db,J7)=>{"use strict";function kO(r){return r===0?-27557314351390663e-23:-27557314351390663e-23+r*(2087572321298175e-24+r*-11359647557788195e-27)}J7.exports=kO});var x7=s((Gb,z7)=>{"use strict";var bO=$7(),KO=j7();function QO(r,e){var i,t,u,a;return a=r*r,u=a*a,t=a*bO(a),t+=u*u*KO(a),i=.5*a,u=1-i,u+(1-u-i+(a*t-r*e))}z7.exports=QO});var Kr=s((Rb,r9)=>{"use strict";var YO=x7();r9.exports=YO});var t9=s((Mb,i9)=>{"use strict";var e9=-.16666666666666632,ZO=.00833333333332249,$O=-.0001984126982985795,JO=27557313707070068e-22,jO=-25050760253406863e-24,zO=158969099521155e-24;function xO(r,e){var i,t,u,a;return a=r*r,u=a*a,i=ZO+a*($O+a*JO)+a*u*(jO+a*zO),t=a*r,e===0?r+t*(e9+a*i):r-(a*(.5*e-t*i)-e-t*e9)}i9.exports=xO});var Qr=s((Wb,a9)=>{"use strict";var rh=t9();a9.exports=rh});var s9=s((Cb,u9)=>{"use strict";var eh=fr(),Gi;eh===!0?Gi=0:Gi=1;u9.exports=Gi});var o9=s((Db,n9)=>{"use strict";var ih=nr(),th=or(),ah=s9(),v9=new th(1),uh=new ih(v9.buffer);function sh(r){return v9[0]=r,uh[ah]}n9.exports=sh});var Ri=s((Bb,f9)=>{"use strict";var vh=o9();f9.exports=vh});var c9=s((Xb,l9)=>{"use strict";function nh(r,e){var i,t;for(i=[],t=0;t<e;t++)i.push(r);return i}l9.exports=nh});var q9=s((Ub,p9)=>{"use strict";var oh=c9();p9.exports=oh});var I9=s((Vb,m9)=>{"use strict";var fh=q9();function lh(r){return fh(0,r)}m9.exports=lh});var Mi=s((kb,_9)=>{"use strict";var ch=I9();_9.exports=ch});var E9=s((bb,S9)=>{"use strict";var ph=j(),Re=w0(),Ce=Mi(),A9=[10680707,7228996,1387004,2578385,16069853,12639074,9804092,4427841,16666979,11263675,12935607,2387514,4345298,14681673,3074569,13734428,16653803,1880361,10960616,8533493,3062596,8710556,7349940,6258241,3772886,3769171,3798172,8675211,12450088,3874808,9961438,366607,15675153,9132554,7151469,3571407,2607881,12013382,4155038,6285869,7677882,13102053,15825725,473591,9065106,15363067,6271263,9264392,5636912,4652155,7056368,13614112,10155062,1944035,9527646,15080200,6658437,6231200,6832269,16767104,5075751,3212806,1398474,7579849,6349435,12618859],qh=[1.570796251296997,7549789415861596e-23,5390302529957765e-30,3282003415807913e-37,1270655753080676e-44,12293330898111133e-52,27337005381646456e-60,21674168387780482e-67],Wi=16777216,Ci=5960464477539063e-23,Me=Ce(20),N9=Ce(20),We=Ce(20),K=Ce(20);function g9(r,e,i,t,u,a,v,n,o){var c,f,l,q,p,m,_,N,I;for(q=a,I=t[i],N=i,p=0;N>0;p++)f=Ci*I|0,K[p]=I-Wi*f|0,I=t[N-1]+f,N-=1;if(I=Re(I,u),I-=8*ph(I*.125),_=I|0,I-=_,l=0,u>0?(p=K[i-1]>>24-u,_+=p,K[i-1]-=p<<24-u,l=K[i-1]>>23-u):u===0?l=K[i-1]>>23:I>=.5&&(l=2),l>0){for(_+=1,c=0,p=0;p<i;p++)N=K[p],c===0?N!==0&&(c=1,K[p]=16777216-N):K[p]=16777215-N;if(u>0)switch(u){case 1:K[i-1]&=8388607;break;case 2:K[i-1]&=4194303;break}l===2&&(I=1-I,c!==0&&(I-=Re(1,u)))}if(I===0){for(N=0,p=i-1;p>=a;p--)N|=K[p];if(N===0){for(m=1;K[a-m]===0;m++);for(p=i+1;p<=i+m;p++){for(o[n+p]=A9[v+p],f=0,N=0;N<=n;N++)f+=r[N]*o[n+(p-N)];t[p]=f}return i+=m,g9(r,e,i,t,u,a,v,n,o)}for(i-=1,u-=24;K[i]===0;)i-=1,u-=24}else I=Re(I,-u),I>=Wi?(f=Ci*I|0,K[i]=I-Wi*f|0,i+=1,u+=24,K[i]=f):K[i]=I|0;for(f=Re(1,u),p=i;p>=0;p--)t[p]=f*K[p],f*=Ci;for(p=i;p>=0;p--){for(f=0,m=0;m<=q&&m<=i-p;m++)f+=qh[m]*t[p+m];We[i-p]=f}for(f=0,p=i;p>=0;p--)f+=We[p];for(l===0?e[0]=f:e[0]=-f,f=We[0]-f,p=1;p<=i;p++)f+=We[p];return l===0?e[1]=f:e[1]=-f,_&7}function mh(r,e,i,t){var u,a,v,n,o,c,f,l,q;for(a=4,n=t-1,v=(i-3)/24|0,v<0&&(v=0),c=i-24*(v+1),l=v-n,q=n+a,f=0;f<=q;f++)l<0?Me[f]=0:Me[f]=A9[l],l+=1;for(f=0;f<=a;f++){for(u=0,l=0;l<=n;l++)u+=r[l]*Me[n+(f-l)];N9[f]=u}return o=a,g9(r,e,o,N9,c,a,v,n,Me)}S9.exports=mh});var h9=s((Kb,O9)=>{"use strict";var Ih=Math.round;O9.exports=Ih});var Di=s((Qb,T9)=>{"use strict";var _h=h9();T9.exports=_h});var L9=s((Yb,w9)=>{"use strict";var Nh=Di(),F9=X(),Ah=.6366197723675814,gh=1.5707963267341256,Sh=6077100506506192e-26,Eh=6077100506303966e-26,Oh=20222662487959506e-37,hh=20222662487111665e-37,Th=84784276603689e-45,y9=2047;function Fh(r,e,i){var t,u,a,v,n,o,c;return u=Nh(r*Ah),v=r-u*gh,n=u*Sh,c=e>>20|0,i[0]=v-n,t=F9(i[0]),o=c-(t>>20&y9),o>16&&(a=v,n=u*Eh,v=a-n,n=u*Oh-(a-v-n),i[0]=v-n,t=F9(i[0]),o=c-(t>>20&y9),o>49&&(a=v,n=u*hh,v=a-n,n=u*Th-(a-v-n),i[0]=v-n)),i[1]=v-i[0]-n,u}w9.exports=Fh});var P9=s((Zb,H9)=>{"use strict";var yh=x(),wh=lr(),Lh=kr(),Hh=X(),Ph=Ri(),dh=Sr(),Gh=E9(),De=L9(),Rh=0,Mh=16777216,Y0=1.5707963267341256,cr=6077100506506192e-26,Be=2*cr,Xe=3*cr,Ue=4*cr,Wh=598523,Ch=1072243195,Dh=1073928572,Bh=1074752122,Xh=1074977148,Uh=1075183036,Vh=1075388923,kh=1075594811,bh=1094263291,Yr=[0,0,0],Zr=[0,0];function Kh(r,e){var i,t,u,a,v,n,o,c;if(u=Hh(r)|0,a=u&yh|0,a<=Ch)return e[0]=r,e[1]=0,0;if(a<=Bh)return(a&Lh)===Wh?De(r,a,e):a<=Dh?u>0?(c=r-Y0,e[0]=c-cr,e[1]=c-e[0]-cr,1):(c=r+Y0,e[0]=c+cr,e[1]=c-e[0]+cr,-1):u>0?(c=r-2*Y0,e[0]=c-Be,e[1]=c-e[0]-Be,2):(c=r+2*Y0,e[0]=c+Be,e[1]=c-e[0]+Be,-2);if(a<=kh)return a<=Uh?a===Xh?De(r,a,e):u>0?(c=r-3*Y0,e[0]=c-Xe,e[1]=c-e[0]-Xe,3):(c=r+3*Y0,e[0]=c+Xe,e[1]=c-e[0]+Xe,-3):a===Vh?De(r,a,e):u>0?(c=r-4*Y0,e[0]=c-Ue,e[1]=c-e[0]-Ue,4):(c=r+4*Y0,e[0]=c+Ue,e[1]=c-e[0]+Ue,-4);if(a<bh)return De(r,a,e);if(a>=wh)return e[0]=NaN,e[1]=NaN,0;for(i=Ph(r),t=(a>>20)-1046,c=dh(a-(t<<20|0),i),n=0;n<2;n++)Yr[n]=c|0,c=(c-Yr[n])*Mh;for(Yr[2]=c,v=3;Yr[v-1]===Rh;)v-=1;return o=Gh(Yr,Zr,t,v,1),u<0?(e[0]=-Zr[0],e[1]=-Zr[1],-o):(e[0]=Zr[0],e[1]=Zr[1],o)}H9.exports=Kh});var Bi=s(($b,d9)=>{"use strict";var Qh=P9();d9.exports=Qh});var M9=s((Jb,R9)=>{"use strict";var Yh=x(),Zh=lr(),$h=X(),G9=Kr(),Xi=Qr(),Jh=Bi(),jh=1072243195,zh=1045430272,G0=[0,0];function xh(r){var e,i;if(e=$h(r),e&=Yh,e<=jh)return e<zh?r:Xi(r,0);if(e>=Zh)return NaN;switch(i=Jh(r,G0),i&3){case 0:return Xi(G0[0],G0[1]);case 1:return G9(G0[0],G0[1]);case 2:return-Xi(G0[0],G0[1]);default:return-G9(G0[0],G0[1])}}R9.exports=xh});var Or=s((jb,W9)=>{"use strict";var rT=M9();W9.exports=rT});var pr=s((zb,C9)=>{"use strict";var eT=2.5066282746310007;C9.exports=eT});var B9=s((xb,D9)=>{"use strict";function iT(r){return r===0?.08333333333334822:.08333333333334822+r*(.0034722222160545866+r*(-.0026813261780578124+r*(-.00022954996161337813+r*.0007873113957930937)))}D9.exports=iT});var V9=s((rK,U9)=>{"use strict";var tT=pr(),X9=D(),aT=d(),uT=B9(),sT=143.01608;function vT(r){var e,i,t;return e=1/r,e=1+e*uT(e),i=aT(r),r>sT?(t=X9(r,.5*r-.25),i=t*(t/i)):i=X9(r,r-.5)/i,tT*i*e}U9.exports=vT});var Ui=s((eK,k9)=>{"use strict";var nT=.5772156649015329;k9.exports=nT});var K9=s((iK,b9)=>{"use strict";var oT=Ui();function fT(r,e){return e/((1+oT*r)*r)}b9.exports=fT});var Y9=s((tK,Q9)=>{"use strict";function lT(r){var e,i,t;return r===0?1:(r<0?e=-r:e=r,e<=1?(i=1+r*(.4942148268014971+r*(.20744822764843598+r*(.04763678004571372+r*(.010421379756176158+r*(.0011913514700658638+r*(.00016011952247675185+r*0)))))),t=1+r*(.0714304917030273+r*(-.23459179571824335+r*(.035823639860549865+r*(.011813978522206043+r*(-.004456419138517973+r*(.0005396055804933034+r*-23158187332412014e-21))))))):(r=1/r,i=0+r*(.00016011952247675185+r*(.0011913514700658638+r*(.010421379756176158+r*(.04763678004571372+r*(.20744822764843598+r*(.4942148268014971+r*1)))))),t=-23158187332412014e-21+r*(.0005396055804933034+r*(-.004456419138517973+r*(.011813978522206043+r*(.035823639860549865+r*(-.23459179571824335+r*(.0714304917030273+r*1))))))),i/t)}Q9.exports=lT});var e8=s((aK,r8)=>{"use strict";var cT=P(),pT=L0(),qT=de(),Z9=y(),mT=j(),IT=Or(),$9=M(),J9=V(),j9=r0(),z9=V9(),x9=K9(),_T=Y9();function NT(r){var e,i,t,u;if(pT(r)&&r<0||r===J9||cT(r))return NaN;if(r===0)return qT(r)?J9:$9;if(r>171.61447887182297)return $9;if(r<-170.5674972726612)return 0;if(i=Z9(r),i>33)return r>=0?z9(r):(t=mT(i),(t&1)===0?e=-1:e=1,u=i-t,u>.5&&(t+=1,u=i-t),u=i*IT(j9*u),e*j9/(Z9(u)*z9(i)));for(u=1;r>=3;)r-=1,u*=r;for(;r<0;){if(r>-1e-9)return x9(r,u);u/=r,r+=1}for(;r<2;){if(r<1e-9)return x9(r,u);u/=r,r+=1}return r===2?u:(r-=2,u*_T(r))}r8.exports=NT});var a0=s((uK,i8)=>{"use strict";var AT=e8();i8.exports=AT});var $r=s((sK,t8)=>{"use strict";var gT=170;t8.exports=gT});var a8=s((vK,ST)=>{ST.exports=[1,1,2,6,24,120,720,5040,40320,362880,3628800,39916800,479001600,6227020800,87178291200,1307674368e3,20922789888e3,355687428096e3,6402373705728e3,121645100408832e3,243290200817664e4,5109094217170944e4,11240007277776077e5,2585201673888498e7,6204484017332394e8,15511210043330986e9,40329146112660565e10,10888869450418352e12,30488834461171387e13,8841761993739702e15,26525285981219107e16,8222838654177922e18,2631308369336935e20,8683317618811886e21,29523279903960416e22,10333147966386145e24,37199332678990125e25,13763753091226346e27,5230226174666011e29,20397882081197444e30,8159152832478977e32,3345252661316381e34,140500611775288e37,6041526306337383e37,2658271574788449e39,11962222086548019e40,5502622159812089e42,25862324151116818e43,12413915592536073e45,6082818640342675e47,30414093201713376e48,15511187532873822e50,8065817517094388e52,42748832840600255e53,2308436973392414e56,12696403353658276e57,7109985878048635e59,40526919504877214e60,23505613312828785e62,13868311854568984e64,832098711274139e67,5075802138772248e68,3146997326038794e70,198260831540444e73,12688693218588417e73,8247650592082472e75,5443449390774431e77,3647111091818868e79,24800355424368305e80,1711224524281413e83,11978571669969892e84,8504785885678623e86,61234458376886085e87,44701154615126844e89,3307885441519386e92,248091408113954e95,18854947016660504e95,14518309202828587e97,11324281178206297e99,8946182130782976e101,7156945704626381e103,5797126020747368e105,4753643337012842e107,3945523969720659e109,3314240134565353e111,281710411438055e114,24227095383672734e114,2107757298379528e117,18548264225739844e118,1650795516090846e121,14857159644817615e122,1352001527678403e125,12438414054641308e126,11567725070816416e128,1087366156656743e131,1032997848823906e133,9916779348709496e134,9619275968248212e136,9426890448883248e138,9332621544394415e140,9332621544394415e142,942594775983836e145,9614466715035127e146,990290071648618e149,10299016745145628e150,1081396758240291e153,11462805637347084e154,1226520203196138e157,1324641819451829e159,14438595832024937e160,1588245541522743e163,17629525510902446e164,1974506857221074e167,22311927486598138e168,25435597334721877e170,2925093693493016e173,3393108684451898e175,3969937160808721e177,4684525849754291e179,5574585761207606e181,6689502913449127e183,8094298525273444e185,9875044200833601e187,1214630436702533e190,1506141741511141e192,1882677176888926e194,2372173242880047e196,30126600184576594e197,3856204823625804e200,4974504222477287e202,6466855489220474e204,847158069087882e207,11182486511960043e208,14872707060906857e210,19929427461615188e212,26904727073180504e214,3659042881952549e217,5012888748274992e219,6917786472619489e221,9615723196941089e223,13462012475717526e225,1898143759076171e228,2695364137888163e230,3854370717180073e232,55502938327393044e233,8047926057471992e236,11749972043909107e238,1727245890454639e241,25563239178728654e242,380892263763057e246,5713383956445855e247,862720977423324e250,13113358856834524e251,20063439050956823e253,30897696138473508e255,4789142901463394e258,7471062926282894e260,11729568794264145e262,1853271869493735e265,29467022724950384e266,47147236359920616e268,7590705053947219e271,12296942187394494e273,20044015765453026e275,3287218585534296e278,5423910666131589e280,9003691705778438e282,1503616514864999e285,25260757449731984e286,4269068009004705e289,7257415615307999e291]});var s8=s((nK,u8)=>{"use strict";var ET=P(),OT=L0(),hT=a0(),TT=M(),FT=$r(),yT=a8();function wT(r){return ET(r)?NaN:OT(r)?r<0?NaN:r<=FT?yT[r]:TT:hT(r+1)}u8.exports=wT});var Vi=s((oK,v8)=>{"use strict";var LT=s8();v8.exports=LT});var o8=s((fK,n8)=>{"use strict";function HT(r){var e,i,t;return r===0?1/0:(r<0?e=-r:e=r,e<=1?(i=3847467039331777e-5+r*(3685766504351951e-5+r*(1588920245372942e-5+r*(4059208354298835e-6+r*(6805476611834733e-7+r*(7823975500312005e-8+r*(6246580776401795e-9+r*(341986.3488721347+r*(12287.194511824551+r*(261.61404416416684+r*2.5066282746310007))))))))),t=0+r*(362880+r*(1026576+r*(1172700+r*(723680+r*(269325+r*(63273+r*(9450+r*(870+r*(45+r*1)))))))))):(r=1/r,i=2.5066282746310007+r*(261.61404416416684+r*(12287.194511824551+r*(341986.3488721347+r*(6246580776401795e-9+r*(7823975500312005e-8+r*(6805476611834733e-7+r*(4059208354298835e-6+r*(1588920245372942e-5+r*(3685766504351951e-5+r*3847467039331777e-5))))))))),t=1+r*(45+r*(870+r*(9450+r*(63273+r*(269325+r*(723680+r*(1172700+r*(1026576+r*(362880+r*0)))))))))),i/t)}n8.exports=HT});var l8=s((lK,f8)=>{"use strict";var PT=o8();f8.exports=PT});var p8=s((cK,c8)=>{"use strict";var dT=l8();c8.exports=dT});var qr=s((pK,q8)=>{"use strict";var GT=10.900511;q8.exports=GT});var O8=s((qK,E8)=>{"use strict";var m8=p8(),RT=a0(),MT=i0(),I8=y(),_8=d(),N8=D(),A8=t0(),WT=K0(),CT=qr(),g8=$r(),DT=4269068009004705e289;function S8(r,e){var i,t,u;return r<A8?e>=g8?(t=S8(e,g8-e),t*=r,t*=DT,1/t):1/(r*RT(r+e)):(u=r+CT-.5,r+e===r?I8(e/u)<A8?i=_8(-e):i=1:(I8(e)<10?i=_8((.5-r)*MT(e/u)):i=N8(u/(u+e),r-.5),i*=m8(r)/m8(r+e)),i*=N8(WT/(u+e),e),i)}E8.exports=S8});var L8=s((mK,w8)=>{"use strict";var BT=y(),h8=j(),T8=a0(),F8=Vi(),y8=$r(),XT=O8();function UT(r,e){var i,t,u;if(r<=0||r+e<=0)return T8(r)/T8(r+e);if(t=h8(e),t===e){if(u=h8(r),u===r&&r<=y8&&r+e<=y8)return F8(u-1)/F8(t+u-1);if(BT(e)<20){if(e===0)return 1;if(e<0){for(r-=1,i=r,e+=1;e!==0;)r-=1,i*=r,e+=1;return i}for(i=1/r,e-=1;e!==0;)r+=1,i/=r,e-=1;return i}}return XT(r,e)}w8.exports=UT});var Ve=s((IK,H8)=>{"use strict";var VT=L8();H8.exports=VT});var d8=s((_K,P8)=>{"use strict";function kT(r){return r===0?.3999999999940942:.3999999999940942+r*(.22222198432149784+r*.15313837699209373)}P8.exports=kT});var R8=s((NK,G8)=>{"use strict";function bT(r){return r===0?.6666666666666735:.6666666666666735+r*(.2857142874366239+r*(.1818357216161805+r*.14798198605116586))}G8.exports=bT});var D8=s((AK,C8)=>{"use strict";var M8=X(),KT=X0(),QT=P(),YT=m0(),ZT=V(),$T=d8(),JT=R8(),ke=.6931471803691238,be=19082149292705877e-26,jT=0x40000000000000,zT=.3333333333333333,W8=1048575,xT=2146435072,rF=1048576,eF=1072693248;function iF(r){var e,i,t,u,a,v,n,o,c,f,l,q;return r===0?ZT:QT(r)||r<0?NaN:(i=M8(r),a=0,i<rF&&(a-=54,r*=jT,i=M8(r)),i>=xT?r+r:(a+=(i>>20)-YT|0,i&=W8,o=i+614244&1048576|0,r=KT(r,i|o^eF),a+=o>>20|0,n=r-1,(W8&2+i)<3?n===0?a===0?0:a*ke+a*be:(v=n*n*(.5-zT*n),a===0?n-v:a*ke-(v-a*be-n)):(f=n/(2+n),q=f*f,o=i-398458|0,l=q*q,c=440401-i|0,u=l*$T(l),t=q*JT(l),o|=c,v=t+u,o>0?(e=.5*n*n,a===0?n-(e-f*(e+v)):a*ke-(e-(f*(e+v)+a*be)-n)):a===0?n-f*(n-v):a*ke-(f*(n-v)-a*be-n))))}C8.exports=iF});var H=s((gK,B8)=>{"use strict";var tF=D8();B8.exports=tF});var V8=s((SK,U8)=>{"use strict";var aF=X(),ki=Kr(),X8=Qr(),uF=Bi(),sF=x(),vF=lr(),R0=[0,0],nF=1072243195,oF=1044381696;function fF(r){var e,i;if(e=aF(r),e&=sF,e<=nF)return e<oF?1:ki(r,0);if(e>=vF)return NaN;switch(i=uF(r,R0),i&3){case 0:return ki(R0[0],R0[1]);case 1:return-X8(R0[0],R0[1]);case 2:return-ki(R0[0],R0[1]);default:return X8(R0[0],R0[1])}}U8.exports=fF});var Ke=s((EK,k8)=>{"use strict";var lF=V8();k8.exports=lF});var Q8=s((OK,K8)=>{"use strict";var cF=P(),pF=I0(),b8=Ke(),bi=Or(),qF=y(),Jr=Er(),jr=r0();function mF(r){var e,i;return cF(r)?NaN:pF(r)?NaN:(i=r%2,e=qF(i),e===0||e===1?Jr(0,i):e<.25?bi(jr*i):e<.75?(e=.5-e,Jr(b8(jr*e),i)):e<1.25?(i=Jr(1,i)-i,bi(jr*i)):e<1.75?(e-=1.5,-Jr(b8(jr*e),i)):(i-=Jr(2,i),bi(jr*i)))}K8.exports=mF});var Z8=s((hK,Y8)=>{"use strict";var IF=Q8();Y8.exports=IF});var J8=s((TK,$8)=>{"use strict";function _F(r){return r===0?.06735230105312927:.06735230105312927+r*(.007385550860814029+r*(.0011927076318336207+r*(.00022086279071390839+r*25214456545125733e-21)))}$8.exports=_F});var z8=s((FK,j8)=>{"use strict";function NF(r){return r===0?.020580808432516733:.020580808432516733+r*(.0028905138367341563+r*(.0005100697921535113+r*(.00010801156724758394+r*44864094961891516e-21)))}j8.exports=NF});var ru=s((yK,x8)=>{"use strict";function AF(r){return r===0?1.3920053346762105:1.3920053346762105+r*(.7219355475671381+r*(.17193386563280308+r*(.01864591917156529+r*(.0007779424963818936+r*7326684307446256e-21))))}x8.exports=AF});var iu=s((wK,eu)=>{"use strict";function gF(r){return r===0?.21498241596060885:.21498241596060885+r*(.325778796408931+r*(.14635047265246445+r*(.02664227030336386+r*(.0018402845140733772+r*3194753265841009e-20))))}eu.exports=gF});var au=s((LK,tu)=>{"use strict";function SF(r){return r===0?-.032788541075985965:-.032788541075985965+r*(.006100538702462913+r*(-.0014034646998923284+r*.00031563207090362595))}tu.exports=SF});var su=s((HK,uu)=>{"use strict";function EF(r){return r===0?.01797067508118204:.01797067508118204+r*(-.0036845201678113826+r*(.000881081882437654+r*-.00031275416837512086))}uu.exports=EF});var nu=s((PK,vu)=>{"use strict";function OF(r){return r===0?-.010314224129834144:-.010314224129834144+r*(.0022596478090061247+r*(-.0005385953053567405+r*.0003355291926355191))}vu.exports=OF});var fu=s((dK,ou)=>{"use strict";function hF(r){return r===0?.6328270640250934:.6328270640250934+r*(1.4549225013723477+r*(.9777175279633727+r*(.22896372806469245+r*.013381091853678766)))}ou.exports=hF});var cu=s((GK,lu)=>{"use strict";function TF(r){return r===0?2.4559779371304113:2.4559779371304113+r*(2.128489763798934+r*(.7692851504566728+r*(.10422264559336913+r*.003217092422824239)))}lu.exports=TF});var qu=s((RK,pu)=>{"use strict";function FF(r){return r===0?.08333333333333297:.08333333333333297+r*(-.0027777777772877554+r*(.0007936505586430196+r*(-.00059518755745034+r*(.0008363399189962821+r*-.0016309293409657527))))}pu.exports=FF});var _u=s((MK,Iu)=>{"use strict";var yF=P(),wF=I0(),LF=y(),hr=H(),HF=Xr(),PF=Z8(),dF=r0(),Ki=M(),GF=J8(),RF=z8(),MF=ru(),WF=iu(),CF=au(),DF=su(),BF=nu(),XF=fu(),UF=cu(),VF=qu(),kF=.07721566490153287,bF=.3224670334241136,KF=1,QF=-.07721566490153287,YF=.48383612272381005,ZF=-.1475877229945939,$F=.06462494023913339,JF=-.07721566490153287,jF=1,zF=.4189385332046727,Qe=1.4616321449683622,xF=4503599627370496,ry=72057594037927940,ey=13877787807814457e-33,mu=1.4616321449683622,iy=-.12148629053584961,ty=-3638676997039505e-33;function ay(r){var e,i,t,u,a,v,n,o,c,f,l,q,p;if(yF(r)||wF(r))return r;if(r===0)return Ki;if(r<0?(e=!0,r=-r):e=!1,r<ey)return-hr(r);if(e){if(r>=xF||(c=PF(r),c===0))return Ki;i=hr(dF/LF(c*r))}if(r===1||r===2)return 0;if(r<2)switch(r<=.9?(p=-hr(r),r>=Qe-1+.27?(l=1-r,t=0):r>=Qe-1-.27?(l=r-(mu-1),t=1):(l=r,t=2)):(p=0,r>=Qe+.27?(l=2-r,t=0):r>=Qe-.27?(l=r-mu,t=1):(l=r-1,t=2)),t){case 0:q=l*l,v=kF+q*GF(q),a=q*(bF+q*RF(q)),n=l*v+a,p+=n-.5*l;break;case 1:q=l*l,f=q*l,v=YF+f*CF(f),a=ZF+f*DF(f),u=$F+f*BF(f),n=q*v-(ty-f*(a+l*u)),p+=iy+n;break;case 2:v=l*(JF+l*XF(l)),a=jF+l*UF(l),p+=-.5*l+v/a;break}else if(r<8)switch(t=HF(r),l=r-t,n=l*(QF+l*WF(l)),o=KF+l*MF(l),p=.5*l+n/o,q=1,t){case 7:q*=l+6;case 6:q*=l+5;case 5:q*=l+4;case 4:q*=l+3;case 3:q*=l+2,p+=hr(q)}else r<ry?(c=hr(r),q=1/r,l=q*q,f=zF+q*VF(l),p=(r-.5)*(c-1)+f):p=r*(hr(r)-1);return e&&(p=i-p),p}Iu.exports=ay});var Tr=s((WK,Nu)=>{"use strict";var uy=_u();Nu.exports=uy});var u0=s((CK,Au)=>{"use strict";var sy=709.782712893384;Au.exports=sy});var Qi=s((DK,gu)=>{"use strict";var vy=14901161193847656e-24;gu.exports=vy});var Eu=s((BK,Su)=>{"use strict";var ny=eval;Su.exports=ny});var hu=s((XK,Ou)=>{"use strict";var oy=Eu();function fy(){var r;try{oy('"use strict"; (function* () {})'),r=!0}catch{r=!1}return r}Ou.exports=fy});var Yi=s((UK,Tu)=>{"use strict";var ly=hu();Tu.exports=ly});var yu=s((VK,Fu)=>{"use strict";var Ye=y(),cy=t0(),py=1e6;function qy(r,e){var i,t,u,a,v,n;if(n={},arguments.length>1&&(n=e),t=n.tolerance||cy,a=n.maxTerms||py,v=n.initialValue||0,i=typeof r.next=="function",i===!0){for(u of r)if(v+=u,Ye(t*v)>=Ye(u)||--a===0)break}else do u=r(),v+=u;while(Ye(t*v)<Ye(u)&&--a);return v}Fu.exports=qy});var Hu=s((kK,Lu)=>{"use strict";var wu=y(),my=t0(),Iy=1e6;function _y(r,e){var i,t,u,a,v;v={},arguments.length>1&&(v=e),i=v.tolerance||my,u=v.maxTerms||Iy,a=v.initialValue||0;do t=r(),a+=t;while(wu(i*a)<wu(t)&&--u);return a}Lu.exports=_y});var Z0=s((bK,Pu)=>{"use strict";var Ny=Yi(),Ay=yu(),gy=Hu(),Zi;Ny()?Zi=Ay:Zi=gy;Pu.exports=Zi});var Gu=s((KK,du)=>{"use strict";function Sy(r,e){var i=1,t=r,u=e;return a;function a(){var v=i;return i*=t/u,t-=1,v}}du.exports=Sy});var Mu=s((QK,Ru)=>{"use strict";var Ey=Z0(),Oy=Gu();function hy(r,e){var i,t;return t=Oy(r,e),i=Ey(t),i}Ru.exports=hy});var Cu=s((YK,Wu)=>{"use strict";var Ty=d();function Fy(r,e){var i,t,u,a;if(u=Ty(-e),t=u,t!==0)for(i=t,a=1;a<r;++a)i/=a,i*=e,t+=i;return t}Wu.exports=Fy});var Bu=s((ZK,Du)=>{"use strict";function yy(r){return r===0?-.3250421072470015:-.3250421072470015+r*(-.02848174957559851+r*(-.005770270296489442+r*-23763016656650163e-21))}Du.exports=yy});var Uu=s(($K,Xu)=>{"use strict";function wy(r){return r===0?.39791722395915535:.39791722395915535+r*(.0650222499887673+r*(.005081306281875766+r*(.00013249473800432164+r*-3960228278775368e-21)))}Xu.exports=wy});var ku=s((JK,Vu)=>{"use strict";function Ly(r){return r===0?.41485611868374833:.41485611868374833+r*(-.3722078760357013+r*(.31834661990116175+r*(-.11089469428239668+r*(.035478304325618236+r*-.002166375594868791))))}Vu.exports=Ly});var Ku=s((jK,bu)=>{"use strict";function Hy(r){return r===0?.10642088040084423:.10642088040084423+r*(.540397917702171+r*(.07182865441419627+r*(.12617121980876164+r*(.01363708391202905+r*.011984499846799107))))}bu.exports=Hy});var Yu=s((zK,Qu)=>{"use strict";function Py(r){return r===0?-.6938585727071818:-.6938585727071818+r*(-10.558626225323291+r*(-62.375332450326006+r*(-162.39666946257347+r*(-184.60509290671104+r*(-81.2874355063066+r*-9.814329344169145)))))}Qu.exports=Py});var $u=s((xK,Zu)=>{"use strict";function dy(r){return r===0?19.651271667439257:19.651271667439257+r*(137.65775414351904+r*(434.56587747522923+r*(645.3872717332679+r*(429.00814002756783+r*(108.63500554177944+r*(6.570249770319282+r*-.0604244152148581))))))}Zu.exports=dy});var ju=s((rQ,Ju)=>{"use strict";function Gy(r){return r===0?-.799283237680523:-.799283237680523+r*(-17.757954917754752+r*(-160.63638485582192+r*(-637.5664433683896+r*(-1025.0951316110772+r*-483.5191916086514))))}Ju.exports=Gy});var xu=s((eQ,zu)=>{"use strict";function Ry(r){return r===0?30.33806074348246:30.33806074348246+r*(325.7925129965739+r*(1536.729586084437+r*(3199.8582195085955+r*(2553.0504064331644+r*(474.52854120695537+r*-22.44095244658582)))))}zu.exports=Ry});var ts=s((iQ,is)=>{"use strict";var My=P(),rs=d(),Wy=_0(),Cy=M(),Dy=V(),By=Bu(),Xy=Uu(),Uy=ku(),Vy=Ku(),ky=Yu(),by=$u(),Ky=ju(),Qy=xu(),Ze=1e-300,Yy=13877787807814457e-33,es=.8450629115104675,Zy=.12837916709551256,$y=1,Jy=-.0023621185607526594,jy=1,zy=-.009864944034847148,xy=1,rw=-.0098649429247001,ew=1;function iw(r){var e,i,t,u,a,v,n,o;if(My(r))return NaN;if(r===Cy)return 0;if(r===Dy)return 2;if(r===0)return 1;if(r<0?(e=!0,i=-r):(e=!1,i=r),i<.84375)return i<Yy?1-r:(t=r*r,u=Zy+t*By(t),a=$y+t*Xy(t),v=u/a,r<.25?1-(r+r*v):(u=r*v,u+=r-.5,.5-u));if(i<1.25)return a=i-1,n=Jy+a*Uy(a),o=jy+a*Vy(a),e?1+es+n/o:1-es-n/o;if(i<28){if(a=1/(i*i),i<2.857142857142857)u=zy+a*ky(a),a=xy+a*by(a);else{if(r<-6)return 2-Ze;u=rw+a*Ky(a),a=ew+a*Qy(a)}return t=Wy(i,0),u=rs(-(t*t)-.5625)*rs((t-i)*(t+i)+u/a),e?2-u/i:u/i}return e?2-Ze:Ze*Ze}is.exports=iw});var Fr=s((tQ,as)=>{"use strict";var tw=ts();as.exports=tw});var vs=s((aQ,ss)=>{"use strict";var aw=Fr(),us=W(),uw=d(),sw=r0();function vw(r,e){var i,t,u,a,v;if(a=aw(us(e)),a!==0&&r>1){for(t=uw(-e)/us(sw*e),t*=e,i=.5,t/=i,u=t,v=2;v<r;++v)t/=v-i,t*=e,u+=t;a+=u}return a}ss.exports=vw});var M0=s((uQ,ns)=>{"use strict";var nw=-708.3964185322641;ns.exports=nw});var cs=s((sQ,ls)=>{"use strict";var yr=d(),$e=D(),ow=H(),os=u0(),fs=M0();function fw(r,e){var i,t;return t=r*ow(e),e>=1?t<os&&-e>fs?i=$e(e,r)*yr(-e):r>=1?i=$e(e/yr(e/r),r):i=yr(t-e):t>fs?i=$e(e,r)*yr(-e):e/r<os?i=$e(e/yr(e/r),r):i=yr(t-e),i}ls.exports=fw});var $i=s((vQ,ps)=>{"use strict";function lw(r,e){var i,t;if(t=r.length,t<2||e===0)return t===0?0:r[0];for(t-=1,i=r[t]*e+r[t-1],t-=2;t>=0;)i=i*e+r[t],t-=1;return i}ps.exports=lw});var ms=s((nQ,qs)=>{"use strict";var cw=Function;qs.exports=cw});var _s=s((oQ,Is)=>{"use strict";var pw=ms();Is.exports=pw});var As=s((fQ,Ns)=>{"use strict";var qw=_s(),mw=$i();function Iw(r){var e,i,t,u;if(r.length>500)return a;if(e="return function evalpoly(x){",i=r.length,i===0)e+="return 0.0;";else if(i===1)e+="return "+r[0]+";";else{for(e+="if(x===0.0){return "+r[0]+";}",e+="return "+r[0],t=i-1,u=1;u<i;u++)e+="+x*",u<t&&(e+="("),e+=r[u];for(u=0;u<t-1;u++)e+=")";e+=";"}return e+="}",e+="//# sourceURL=evalpoly.factory.js",new qw(e)();function a(v){return mw(r,v)}}Ns.exports=Iw});var N0=s((lQ,Ss)=>{"use strict";var _w=Cr(),gs=$i(),Nw=As();_w(gs,"factory",Nw);Ss.exports=gs});var Os=s((cQ,Es)=>{"use strict";function Aw(r){var e=-r,i=-1,t=0;return u;function u(){return i*=e,t+=1,i/t}}Es.exports=Aw});var Ts=s((pQ,hs)=>{"use strict";var gw=y(),Sw=H(),Ew=t0(),Ow=Z0(),hw=Os();function Tw(r){var e,i;return r<=-1?NaN:(i=gw(r),i>.95?Sw(1+r)-r:i<Ew?-r*r/2:(e={initialValue:-r},Ow(hw(r),e)))}hs.exports=Tw});var Je=s((qQ,Fs)=>{"use strict";var Fw=Ts();Fs.exports=Fw});var je=s((mQ,ys)=>{"use strict";var yw=6.283185307179586;ys.exports=yw});var Ls=s((IQ,ws)=>{"use strict";function ww(r){return r===0?-.3333333333333333:-.3333333333333333+r*(.08333333333333333+r*(-.014814814814814815+r*(.0011574074074074073+r*(.0003527336860670194+r*(-.0001787551440329218+r*(3919263178522438e-20+r*(-21854485106799924e-22+r*(-185406221071516e-20+r*(8296711340953087e-22+r*(-17665952736826078e-23+r*(6707853543401498e-24+r*(10261809784240309e-24+r*(-4382036018453353e-24+r*914769958223679e-24)))))))))))))}ws.exports=ww});var Ps=s((_Q,Hs)=>{"use strict";function Lw(r){return r===0?-.001851851851851852:-.001851851851851852+r*(-.003472222222222222+r*(.0026455026455026454+r*(-.0009902263374485596+r*(.00020576131687242798+r*(-4018775720164609e-22+r*(-18098550334489977e-21+r*(764916091608111e-20+r*(-16120900894563446e-22+r*(4647127802807434e-24+r*(1378633446915721e-22+r*(-5752545603517705e-23+r*11951628599778148e-24)))))))))))}Hs.exports=Lw});var Gs=s((NQ,ds)=>{"use strict";function Hw(r){return r===0?.004133597883597883:.004133597883597883+r*(-.0026813271604938273+r*(.0007716049382716049+r*(20093878600823047e-22+r*(-.00010736653226365161+r*(52923448829120125e-21+r*(-12760635188618728e-21+r*(3423578734096138e-23+r*(13721957309062932e-22+r*(-6298992138380055e-22+r*14280614206064242e-23)))))))))}ds.exports=Hw});var Ms=s((AQ,Rs)=>{"use strict";function Pw(r){return r===0?.0006494341563786008:.0006494341563786008+r*(.00022947209362139917+r*(-.0004691894943952557+r*(.00026772063206283885+r*(-7561801671883977e-20+r*(-2396505113867297e-22+r*(11082654115347302e-21+r*(-56749528269915965e-22+r*14230900732435883e-22)))))))}Rs.exports=Pw});var Cs=s((gQ,Ws)=>{"use strict";function dw(r){return r===0?-.0008618882909167117:-.0008618882909167117+r*(.0007840392217200666+r*(-.0002990724803031902+r*(-14638452578843418e-22+r*(6641498215465122e-20+r*(-3968365047179435e-20+r*11375726970678419e-21)))))}Ws.exports=dw});var Bs=s((SQ,Ds)=>{"use strict";function Gw(r){return r===0?-.00033679855336635813:-.00033679855336635813+r*(-6972813758365858e-20+r*(.0002772753244959392+r*(-.00019932570516188847+r*(6797780477937208e-20+r*(1419062920643967e-22+r*(-13594048189768693e-21+r*(8018470256334202e-21+r*-2291481176508095e-21)))))))}Ds.exports=Gw});var Us=s((EQ,Xs)=>{"use strict";function Rw(r){return r===0?.0005313079364639922:.0005313079364639922+r*(-.0005921664373536939+r*(.0002708782096718045+r*(7902353232660328e-22+r*(-8153969367561969e-20+r*(561168275310625e-19+r*-18329116582843375e-21)))))}Xs.exports=Rw});var ks=s((OQ,Vs)=>{"use strict";function Mw(r){return r===0?.00034436760689237765:.00034436760689237765+r*(5171790908260592e-20+r*(-.00033493161081142234+r*(.0002812695154763237+r*-.00010976582244684731)))}Vs.exports=Mw});var Ks=s((hQ,bs)=>{"use strict";function Ww(r){return r===0?-.0006526239185953094:-.0006526239185953094+r*(.0008394987206720873+r*-.000438297098541721)}bs.exports=Ww});var Ys=s((TQ,Qs)=>{"use strict";var Cw=N0(),Dw=Je(),Bw=Fr(),Ji=W(),Xw=d(),Uw=je(),Vw=Ls(),kw=Ps(),bw=Gs(),Kw=Ms(),Qw=Cs(),Yw=Bs(),Zw=Us(),$w=ks(),Jw=Ks(),l0=[0,0,0,0,0,0,0,0,0,0];function jw(r,e){var i,t,u,a,v;return t=(e-r)/r,u=-Dw(t),a=r*u,v=Ji(2*u),e<r&&(v=-v),l0[0]=Vw(v),l0[1]=kw(v),l0[2]=bw(v),l0[3]=Kw(v),l0[4]=Qw(v),l0[5]=Yw(v),l0[6]=Zw(v),l0[7]=$w(v),l0[8]=Jw(v),l0[9]=-.0005967612901927463,i=Cw(l0,1/r),i*=Xw(-a)/Ji(Uw*r),e<r&&(i=-i),i+=Bw(Ji(a))/2,i}Qs.exports=jw});var $s=s((FQ,Zs)=>{"use strict";function zw(r,e){var i=1,t=r,u=e;return a;function a(){var v=i;return t+=1,i*=u/t,v}}Zs.exports=zw});var ji=s((yQ,Js)=>{"use strict";var xw=Z0(),rL=$s();function eL(r,e,i){var t,u;return i=i||0,u=rL(r,e),t=xw(u,{initialValue:i}),t}Js.exports=eL});var zs=s((wQ,js)=>{"use strict";function iL(r){var e,i,t;return r===0?1/0:(r<0?e=-r:e=r,e<=1?(i=709811.662581658+r*(679979.8474157227+r*(293136.7857211597+r*(74887.54032914672+r*(12555.290582413863+r*(1443.4299244417066+r*(115.24194596137347+r*(6.309239205732627+r*(.22668404630224365+r*(.004826466289237662+r*4624429436045379e-20))))))))),t=0+r*(362880+r*(1026576+r*(1172700+r*(723680+r*(269325+r*(63273+r*(9450+r*(870+r*(45+r*1)))))))))):(r=1/r,i=4624429436045379e-20+r*(.004826466289237662+r*(.22668404630224365+r*(6.309239205732627+r*(115.24194596137347+r*(1443.4299244417066+r*(12555.290582413863+r*(74887.54032914672+r*(293136.7857211597+r*(679979.8474157227+r*709811.662581658))))))))),t=1+r*(45+r*(870+r*(9450+r*(63273+r*(269325+r*(723680+r*(1172700+r*(1026576+r*(362880+r*0)))))))))),i/t)}js.exports=iL});var rv=s((LQ,xs)=>{"use strict";var tL=zs();xs.exports=tL});var zr=s((HQ,ev)=>{"use strict";var aL=rv();ev.exports=aL});var av=s((PQ,tv)=>{"use strict";var uL=zr(),sL=Tr(),vL=a0(),nL=Je(),oL=W(),fL=y(),$0=d(),xr=D(),zi=Q0(),xi=P0(),iv=H(),lL=d0(),ze=u0(),re=M0(),r2=qr(),cL=K0();function pL(r,e){var i,t,u,a,v,n,o;return u=r+r2-.5,o=(e-r-r2+.5)/u,r<1?e<=re||r<1/lL?$0(r*iv(e)-e-sL(r)):xr(e,r)*$0(-e)/vL(r):(fL(o*o*r)<=100&&r>150?(i=r*nL(o)+e*(.5-r2)/u,i=$0(i)):(a=r*iv(e/u),v=r-e,xi(a,v)<=re||zi(a,v)>=ze?(t=v/r,xi(a,v)/2>re&&zi(a,v)/2<ze?(n=xr(e/u,r/2)*$0(v/2),i=n*n):xi(a,v)/4>re&&zi(a,v)/4<ze&&e>r?(n=xr(e/u,r/4)*$0(v/4),i=n*n,i*=i):t>re&&t<ze?i=xr(e*$0(t)/u,r):i=$0(a+v)):i=xr(e/u,r)*$0(v)),i*=oL(u/cL)/uL(r),i)}tv.exports=pL});var vv=s((dQ,sv)=>{"use strict";var e2=P(),qL=I0(),uv=y(),mL=U0(),IL=H(),_L=D(),NL=Xr();function AL(r,e){var i,t;if(e2(r)||e2(e))return NaN;if(e===0)return 0;if(r===0)return-1;if(r<0&&e%2===0&&(r=-r),r>0){if((uv(e*(r-1))<.5||uv(e)<.2)&&(t=IL(r)*e,t<.5))return mL(t)}else if(NL(e)!==e)return NaN;return i=_L(r,e)-1,qL(i)||e2(i)?NaN:i}sv.exports=AL});var i2=s((GQ,nv)=>{"use strict";var gL=vv();nv.exports=gL});var fv=s((RQ,ov)=>{"use strict";function SL(r){var e,i,t;return r===0?-.01803556856784494:(r<0?e=-r:e=r,e<=1?(i=-.01803556856784494+r*(.02512664961998968+r*(.049410315156753225+r*(.0172491608709614+r*(-.0002594535632054381+r*(-.0005410098692152044+r*(-3245886498259485e-20+r*0)))))),t=1+r*(1.962029871977952+r*(1.4801966942423133+r*(.5413914320717209+r*(.09885042511280101+r*(.008213096746488934+r*(.00022493629192211576+r*-22335276320861708e-23))))))):(r=1/r,i=0+r*(-3245886498259485e-20+r*(-.0005410098692152044+r*(-.0002594535632054381+r*(.0172491608709614+r*(.049410315156753225+r*(.02512664961998968+r*-.01803556856784494)))))),t=-22335276320861708e-23+r*(.00022493629192211576+r*(.008213096746488934+r*(.09885042511280101+r*(.5413914320717209+r*(1.4801966942423133+r*(1.962029871977952+r*1))))))),i/t)}ov.exports=SL});var cv=s((MQ,lv)=>{"use strict";function EL(r){var e,i,t;return r===0?.04906224540690395:(r<0?e=-r:e=r,e<=1?(i=.04906224540690395+r*(-.09691175301595212+r*(-.4149833583594954+r*(-.4065671242119384+r*(-.1584135863906922+r*(-.024014982064857155+r*-.0010034668769627955))))),t=1+r*(3.0234982984646304+r*(3.4873958536072385+r*(1.9141558827442668+r*(.5071377386143635+r*(.05770397226904519+r*.001957681026011072)))))):(r=1/r,i=-.0010034668769627955+r*(-.024014982064857155+r*(-.1584135863906922+r*(-.4065671242119384+r*(-.4149833583594954+r*(-.09691175301595212+r*.04906224540690395))))),t=.001957681026011072+r*(.05770397226904519+r*(.5071377386143635+r*(1.9141558827442668+r*(3.4873958536072385+r*(3.0234982984646304+r*1)))))),i/t)}lv.exports=EL});var qv=s((WQ,pv)=>{"use strict";function OL(r){var e,i,t;return r===0?-.029232972183027003:(r<0?e=-r:e=r,e<=1?(i=-.029232972183027003+r*(.14421626775719232+r*(-.14244039073863127+r*(.05428096940550536+r*(-.008505359768683364+r*(.0004311713426792973+r*0))))),t=1+r*(-1.5016935605448505+r*(.846973248876495+r*(-.22009515181499575+r*(.02558279715597587+r*(-.0010066679553914337+r*-8271935218912905e-22)))))):(r=1/r,i=0+r*(.0004311713426792973+r*(-.008505359768683364+r*(.05428096940550536+r*(-.14244039073863127+r*(.14421626775719232+r*-.029232972183027003))))),t=-8271935218912905e-22+r*(-.0010066679553914337+r*(.02558279715597587+r*(-.22009515181499575+r*(.846973248876495+r*(-1.5016935605448505+r*1)))))),i/t)}pv.exports=OL});var Iv=s((CQ,mv)=>{"use strict";var t2=H(),hL=t0(),TL=fv(),FL=cv(),yL=qv(),wL=.15896368026733398,LL=.5281534194946289,HL=.45201730728149414;function PL(r,e,i){var t,u,a,v;if(r<hL)return-t2(r);if(e===0||i===0)return 0;if(u=0,r>2){if(r>=3){do r-=1,i-=1,u+=t2(r);while(r>=3);i=r-2}return a=i*(r+1),v=TL(i),u+=a*wL+a*v,u}return r<1&&(u+=-t2(r),i=e,e=r,r+=1),r<=1.5?(a=FL(e),t=e*i,u+=t*LL+t*a,u):(a=i*e,v=yL(-i),u+=a*HL+a*v,u)}mv.exports=PL});var Sv=s((DQ,gv)=>{"use strict";var _v=a0(),Nv=U0(),dL=i0(),GL=P(),Av=Iv();function RL(r){return GL(r)?NaN:r<0?r<-.5?_v(1+r)-1:Nv(-dL(r)+Av(r+2,r+1,r)):r<2?Nv(Av(r+1,r,r-1)):_v(1+r)-1}gv.exports=RL});var Ov=s((BQ,Ev)=>{"use strict";var ML=Sv();Ev.exports=ML});var Tv=s((XQ,hv)=>{"use strict";function WL(r,e){var i,t,u,a;return i=-e,e=-e,t=r+1,u=1,v;function v(){return a=i/t,i*=e,u+=1,i/=u,t+=1,a}}hv.exports=WL});var yv=s((UQ,Fv)=>{"use strict";var CL=i2(),DL=Z0(),BL=Ov(),XL=Tv();function UL(r,e,i){var t,u,a,v,n;return u=BL(r),a=(u+1)/r,v=CL(e,r),u-=v,u/=r,n=XL(r,e),v+=1,t=i?a:0,u=-v*DL(n,{initialValue:(t-u)/v}),i&&(u=-u),[u,a]}Fv.exports=UL});var ee=s((VQ,wv)=>{"use strict";var VL=11754943508222875e-54;wv.exports=VL});var Hv=s((kQ,Lv)=>{"use strict";var xe=y(),A0=ee(),kL=t0(),bL=1e6;function KL(r,e,i){var t,u,a,v,n,o,c;if(t=typeof r.next=="function",c=t?r.next().value:r(),v=c[1],a=c[0],v===0&&(v=A0),n=v,o=0,t===!0)do c=r.next().value,c&&(o=c[1]+c[0]*o,o===0&&(o=A0),n=c[1]+c[0]/n,n===0&&(n=A0),o=1/o,u=n*o,v*=u);while(xe(u-1)>e&&--i);else do c=r(),c&&(o=c[1]+c[0]*o,o===0&&(o=A0),n=c[1]+c[0]/n,n===0&&(n=A0),o=1/o,u=n*o,v*=u);while(c&&xe(u-1)>e&&--i);return a/v}function QL(r,e,i){var t,u,a,v,n,o;if(t=typeof r.next=="function",o=t?r.next().value:r(),a=o[1],a===0&&(a=A0),v=a,n=0,t===!0)do o=r.next().value,o&&(n=o[1]+o[0]*n,n===0&&(n=A0),v=o[1]+o[0]/v,v===0&&(v=A0),n=1/n,u=v*n,a*=u);while(o&&xe(u-1)>e&&--i);else do o=r(),o&&(n=o[1]+o[0]*n,n===0&&(n=A0),v=o[1]+o[0]/v,v===0&&(v=A0),n=1/n,u=v*n,a*=u);while(o&&xe(u-1)>e&&--i);return a}function YL(r,e){var i,t,u;return t={},arguments.length>1&&(t=e),i=t.maxIter||bL,u=t.tolerance||kL,t.keep?QL(r,u,i):KL(r,u,i)}Lv.exports=YL});var Gv=s((bQ,dv)=>{"use strict";var Pv=y(),ZL=t0(),wr=ee(),$L=1e6;function JL(r,e,i){var t,u,a,v,n,o;o=r(),n=o[1],u=o[0],n===0&&(n=wr),a=n,v=0;do o=r(),o&&(v=o[1]+o[0]*v,v===0&&(v=wr),a=o[1]+o[0]/a,a===0&&(a=wr),v=1/v,t=a*v,n*=t);while(o&&Pv(t-1)>e&&--i);return u/n}function jL(r,e,i){var t,u,a,v,n;n=r(),v=n[1],v===0&&(v=wr),u=v,a=0;do n=r(),n&&(a=n[1]+n[0]*a,a===0&&(a=wr),u=n[1]+n[0]/u,u===0&&(u=wr),a=1/a,t=u*a,v*=t);while(n&&Pv(t-1)>e&&--i);return v}function zL(r,e){var i,t,u;return t={},arguments.length>1&&(t=e),u=t.tolerance||ZL,i=t.maxIter||$L,t.keep?jL(r,u,i):JL(r,u,i)}dv.exports=zL});var r1=s((KQ,Rv)=>{"use strict";var xL=Yi(),rH=Hv(),eH=Gv(),a2;xL()?a2=rH:a2=eH;Rv.exports=a2});var Wv=s((QQ,Mv)=>{"use strict";function iH(r,e){var i=e-r+1,t=r,u=0;return a;function a(){return u+=1,i+=2,[u*(t-u),i]}}Mv.exports=iH});var u2=s((YQ,Cv)=>{"use strict";var tH=r1(),aH=Wv();function uH(r,e){var i=aH(r,e);return 1/(e-r+1+tH(i))}Cv.exports=uH});var Uv=s((ZQ,Xv)=>{"use strict";var sH=j(),ie=a0(),s2=y(),Dv=D(),vH=H(),nH=Qi(),Bv=d0(),oH=u0(),fH=Mu(),lH=Cu(),cH=vs(),v2=cs(),pH=Ys(),qH=ji(),n2=av(),mH=yv(),IH=u2();function _H(r,e,i,t){var u,a,v,n,o,c,f,l,q,p,m,_,N,I;switch(f=0,l=t,c=e<30&&e<=r+1&&r<oH,c?(N=sH(e),q=N===e,v=q?!1:s2(N-e)===.5):(q=!1,v=!1),q&&r>.6?(l=!l,a=0):v&&r>.2?(l=!l,a=1):r<nH&&e>1?a=6:r>1e3&&(e<r||s2(e-50)/r<1)?(l=!l,a=7):r<.5?-.4/vH(r)<e?a=2:a=3:r<1.1?r*.75<e?a=2:a=3:(o=!1,i&&e>20&&(p=s2((r-e)/e),e>200?20/e>p*p&&(o=!0):p<.4&&(o=!0)),o?a=5:r-1/(3*r)<e?a=2:(a=4,l=!l)),a){case 0:f=lH(e,r),i===!1&&(f*=ie(e));break;case 1:f=cH(e,r),i===!1&&(f*=ie(e));break;case 2:f=i?n2(e,r):v2(e,r),f!==0&&(n=0,u=!1,l&&(n=i?1:ie(e),i||f>=1||Bv*f>n?(n/=f,i||e<1||Bv/e>n?(n*=-e,u=!0):n=0):n=0),f*=qH(e,r,n)/e,u&&(l=!1,f=-f));break;case 3:l=!l,m=mH(e,r,l),f=m[0],I=m[1],l=!1,i&&(f/=I);break;case 4:f=i?n2(e,r):v2(e,r),f!==0&&(f*=IH(e,r));break;case 5:f=pH(e,r),r>=e&&(l=!l);break;case 6:f=i?Dv(r,e)/ie(e+1):Dv(r,e)/e,f*=1-e*r/(e+1);break;case 7:f=i?n2(e,r):v2(e,r),f/=r,f!==0&&(f*=fH(e,r));break}return i&&f>1&&(f=1),l&&(_=i?1:ie(e),f=_-f),f}Xv.exports=_H});var Kv=s(($Q,bv)=>{"use strict";var NH=Tr(),AH=d(),g0=H(),gH=pr(),SH=u0(),EH=M(),OH=$r(),Vv=Uv(),kv=ji(),hH=u2();function TH(r,e,i,t){var u,a,v,n;return r<0||e<=0?NaN:(u=i===void 0?!0:i,v=t,e>=OH&&!u?(v&&e*4<r?(n=e*g0(r)-r,n+=g0(hH(e,r))):!v&&e>4*r?(n=e*g0(r)-r,a=0,n+=g0(kv(e,r,a)/e)):(n=Vv(r,e,!0,v),n===0?v?(n=1+1/(12*e)+1/(288*e*e),n=g0(n)-e+(e-.5)*g0(e),n+=g0(gH)):(n=e*g0(r)-r,a=0,n+=g0(kv(e,r,a)/e)):n=g0(n)+NH(e)),n>SH?EH:AH(n)):Vv(r,e,u,v))}bv.exports=TH});var o2=s((JQ,Qv)=>{"use strict";var FH=Kv();Qv.exports=FH});var Jv=s((jQ,$v)=>{"use strict";var Lr=d(),e1=D(),yH=H(),Yv=u0(),Zv=M0();function wH(r,e){var i,t;return t=r*yH(e),e>=1?t<Yv&&-e>Zv?i=e1(e,r)*Lr(-e):r>=1?i=e1(e/Lr(e/r),r):i=Lr(t-e):t>Zv?i=e1(e,r)*Lr(-e):e/r<Yv?i=e1(e/Lr(e/r),r):i=Lr(t-e),i}$v.exports=wH});var xv=s((zQ,zv)=>{"use strict";var LH=zr(),HH=Tr(),PH=a0(),dH=i0(),GH=W(),RH=y(),J0=d(),te=D(),f2=Q0(),l2=P0(),jv=H(),i1=u0(),ae=M0(),c2=qr(),MH=K0();function WH(r,e){var i,t,u,a,v,n,o;return u=r+c2-.5,o=(e-r-c2+.5)/u,r<1?e<=ae?J0(r*jv(e)-e-HH(r)):te(e,r)*J0(-e)/PH(r):(RH(o*o*r)<=100&&r>150?(i=r*(dH(o)-o)+e*(.5-c2)/u,i=J0(i)):(a=r*jv(e/u),v=r-e,l2(a,v)<=ae||f2(a,v)>=i1?(t=v/r,l2(a,v)/2>ae&&f2(a,v)/2<i1?(n=te(e/u,r/2)*J0(v/2),i=n*n):l2(a,v)/4>ae&&f2(a,v)/4<i1&&e>r?(n=te(e/u,r/4)*J0(v/4),i=n*n,i*=i):t>ae&&t<i1?i=te(e*J0(t)/u,r):i=J0(a+v)):i=te(e/u,r)*J0(v)),i*=GH(u/MH)/LH(r),i)}zv.exports=WH});var un=s((xQ,an)=>{"use strict";var CH=Ve(),rn=Vi(),DH=o2(),BH=i0(),t1=y(),en=D(),XH=H(),UH=V0(),tn=t0(),VH=Jv(),kH=xv(),j0=new Array(30);function bH(r,e,i,t,u,a,v){var n,o,c,f,l,q,p,m,_,N,I,O,A,h,S,T,g,F;if(q=e-1,g=r+q/2,t<.35?N=BH(-t):N=XH(i),F=-g*N,O=kH(e,F),O<=UH)return u;for(v?(n=O/CH(r,e),n/=en(g,e)):n=VH(e,F)/en(g,e),n*=a,j0[0]=1,A=DH(F,e,!0,!0),A/=O,f=u+n*A,c=1,p=N/2,p*=p,m=1,I=4*g*g,l=e,S=1;S<j0.length;++S){for(c+=2,j0[S]=0,_=e-S,o=3,h=1;h<S;++h)_=h*e-S,j0[S]+=_*j0[S-h]/rn(o),o+=2;if(j0[S]/=S,j0[S]+=q/rn(c),A=(l*(l+1)*A+(F+l+1)*m)/I,m*=p,l+=2,T=n*j0[S]*A,f+=T,T>1){if(t1(T)<t1(tn*f))break}else if(t1(T/tn)<t1(f))break}return f}an.exports=bH});var vn=s((rY,sn)=>{"use strict";function KH(r,e,i){var t,u;if(i===0)return 1;for(t=1,u=0;u<i;u++)t*=(r+u)/(e+u);return t}sn.exports=KH});var fn=s((eY,on)=>{"use strict";var nn=y(),QH=Q0();function YH(r,e){return QH(nn(r),nn(e))}on.exports=YH});var cn=s((iY,ln)=>{"use strict";var ZH=fn();ln.exports=ZH});var mn=s((tY,qn)=>{"use strict";var pn=y(),$H=P0();function JH(r,e){return $H(pn(r),pn(e))}qn.exports=JH});var _n=s((aY,In)=>{"use strict";var jH=mn();In.exports=jH});var u1=s((uY,gn)=>{"use strict";var p2=zr(),zH=cn(),xH=_n(),Nn=U0(),z0=i0(),An=W(),a1=y(),S0=d(),E0=D(),rP=P0(),s0=H(),O0=u0(),Hr=M0(),q2=qr(),eP=K0();function iP(r,e,i,t,u){var a,v,n,o,c,f,l,q,p,m,_,N,I,O;if(!u)return E0(i,r)*E0(t,e);if(I=r+e,o=r+q2-.5,c=e+q2-.5,f=I+q2-.5,a=p2(I),a/=p2(r)*p2(e),a*=An(c/eP),a*=An(o/f),l=(i*e-t*o)/o,q=(t*r-i*c)/c,xH(l,q)<.2)if(l*q>0||rP(r,e)<1)a1(l)<.1?a*=S0(r*z0(l)):a*=E0(i*f/o,r),a1(q)<.1?a*=S0(e*z0(q)):a*=E0(t*f/c,e);else if(zH(l,q)<.5)v=r<e,n=e/r,v&&n*q<.1||!v&&l/n>.1?(p=Nn(n*z0(q)),p=l+p+p*l,p=r*z0(p),a*=S0(p)):(p=Nn(z0(l)/n),p=q+p+p*q,p=e*z0(p),a*=S0(p));else if(a1(l)<a1(q))if(O=r*z0(l)+e*s0(t*f/c),O<=Hr||O>=O0){if(O+=s0(a),O>=O0)return NaN;a=S0(O)}else a*=S0(O);else if(O=e*z0(q)+r*s0(i*f/o),O<=Hr||O>=O0){if(O+=s0(a),O>=O0)return NaN;a=S0(O)}else a*=S0(O);else if(_=i*f/o,N=t*f/c,l=r*s0(_),q=e*s0(N),l>=O0||l<=Hr||q>=O0||q<=Hr)if(r<e)if(m=E0(N,e/r),p=r*(s0(_)+s0(m)),p<O0&&p>Hr)a*=E0(m*_,r);else{if(q+=l+s0(a),q>=O0)return NaN;a=S0(q)}else if(m=E0(_,r/e),p=(s0(m)+s0(N))*e,p<O0&&p>Hr)a*=E0(m*N,e);else{if(q+=l+s0(a),q>=O0)return NaN;a=S0(q)}else a*=E0(_,r)*E0(N,e);return a}gn.exports=iP});var En=s((sY,Sn)=>{"use strict";var tP=r1(),aP=u1(),uP={keep:!0,maxIter:1e3};function sP(r,e,i,t){var u=0;return a;function a(){var v,n,o;return n=(r+u-1)*(r+e+u-1)*u*(e-u)*i*i,v=r+2*u-1,n/=v*v,o=u,o+=u*(e-u)*i/(r+2*u-1),o+=(r+u)*(r*t-e*i+1+u*(2-i))/(r+2*u+1),u+=1,[n,o]}}function vP(r,e,i,t,u,a){var v,n,o;return v=aP(r,e,i,t,u),a&&(a[1]=v),v===0?v:(o=sP(r,e,i,t),n=tP(o,uP),v/n)}Sn.exports=vP});var hn=s((vY,On)=>{"use strict";var nP=9007199254740991;On.exports=nP});var Fn=s((nY,Tn)=>{"use strict";function oP(r,e){var i=0,t;if(r===0)return e;if(e===0)return r;for(;(r&1)===0&&(e&1)===0;)r>>>=1,e>>>=1,i+=1;for(;(r&1)===0;)r>>>=1;for(;e;){for(;(e&1)===0;)e>>>=1;r>e&&(t=e,e=r,r=t),e-=r}return r<<i}Tn.exports=oP});var wn=s((oY,yn)=>{"use strict";function fP(r,e){var i=1,t;if(r===0)return e;if(e===0)return r;for(;r%2===0&&e%2===0;)r/=2,e/=2,i*=2;for(;r%2===0;)r/=2;for(;e;){for(;e%2===0;)e/=2;r>e&&(t=e,e=r,r=t),e-=r}return i*r}yn.exports=fP});var Mn=s((fY,Rn)=>{"use strict";var Ln=P(),Hn=L0(),Pn=M(),dn=V(),Gn=di(),lP=Fn(),cP=wn();function pP(r,e){return Ln(r)||Ln(e)?NaN:r===Pn||e===Pn||r===dn||e===dn?NaN:Hn(r)&&Hn(e)?(r<0&&(r=-r),e<0&&(e=-e),r<=Gn&&e<=Gn?lP(r,e):cP(r,e)):NaN}Rn.exports=pP});var Cn=s((lY,Wn)=>{"use strict";var qP=Mn();Wn.exports=qP});var Un=s((cY,Xn)=>{"use strict";var mP=hn(),IP=M(),Dn=L0(),Bn=P(),_P=ye(),NP=j(),AP=Cn();function m2(r,e){var i,t,u,a,v,n,o;if(Bn(r)||Bn(e))return NaN;if(!Dn(r)||!Dn(e))return NaN;if(e<0||(t=1,r<0&&(r=-r+e-1,_P(e)&&(t*=-1)),e>r))return 0;if(e===0||e===r)return t;if(e===1||e===r-1)return t*r;for(r-e<e&&(e=r-e),o=NP(mP/r),i=1,v=1;v<=e&&!(i>o);v++)i*=r,i/=v,r-=1;return v>e?t*i:(u=m2(r,e-v+1),u===IP?t*u:(a=m2(e,e-v+1),n=AP(u,a),u/=n,a/=n,i/=a,t*i*u))}Xn.exports=m2});var kn=s((pY,Vn)=>{"use strict";var gP=Un();Vn.exports=gP});var Qn=s((qY,Kn)=>{"use strict";var bn=kn(),mr=j(),ue=D(),SP=V0();function EP(r,e,i,t){var u,a,v,n,o;if(a=ue(i,r),a>SP)for(n=a,o=mr(r-1);o>e;o--)n*=(o+1)*t/((r-o)*i),a+=n;else if(v=mr(r*i),v<=e+1&&(v=mr(e+2)),a=ue(i,v)*ue(t,r-v),a*=bn(mr(r),mr(v)),a===0)for(o=v-1;o>e;o--)a+=ue(i,o)*ue(t,r-o),a*=bn(mr(r),mr(o));else{for(n=a,u=a,o=v-1;o>e;o--)n*=(o+1)*t/((r-o)*i),a+=n;for(n=u,o=v+1;o<=r;o++)n*=(r-o+1)*i/(o*t),a+=n}return a}Kn.exports=EP});var Zn=s((mY,Yn)=>{"use strict";var OP=u1();function hP(r,e,i,t,u,a,v){var n,o,c,f;if(n=OP(r,e,i,t,a),v&&(v[1]=n),n/=r,n===0)return n;for(c=1,o=1,f=0;f<u-1;++f)o*=(r+e+f)*i/(r+f+1),c+=o;return n*=c,n}Yn.exports=hP});var xn=s((IY,zn)=>{"use strict";var I2=zr(),TP=Z0(),FP=i0(),yP=W(),_2=d(),s1=D(),se=H(),wP=V0(),$n=u0(),Jn=M0(),N2=qr(),LP=K0(),jn={maxTerms:100};function HP(r,e,i,t){var u=1-e,a=1;return v;function v(){var n=t/r;return r+=1,t*=u*i/a,a+=1,u+=1,n}}function PP(r,e,i,t,u,a,v){var n,o,c,f,l,q,p,m;return u?(p=r+e,o=r+N2-.5,c=e+N2-.5,f=p+N2-.5,n=I2(p)/(I2(r)*I2(e)),l=se(f/c)*(e-.5),q=se(i*f/o)*r,l>Jn&&l<$n&&q>Jn&&q<$n?(r*e<c*10?n*=_2((e-.5)*FP(r/c)):n*=s1(f/c,e-.5),n*=s1(i*f/o,r),n*=yP(o/LP),a&&(a[1]=n*s1(v,e))):(n=se(n)+l+q+(se(o)-1)/2,a&&(a[1]=_2(n+e*se(v))),n=_2(n))):n=s1(i,r),n<wP?t:(m=HP(r,e,i,n),jn.initialValue=t,TP(m,jn))}zn.exports=PP});var S2=s((_Y,so)=>{"use strict";var dP=P(),GP=U0(),v1=j(),ro=i0(),eo=Fe(),v0=Li(),A2=W(),RP=d(),ve=D(),MP=Q0(),io=P0(),n1=d0(),to=V0(),WP=di(),CP=Ge(),uo=r0(),x0=un(),g2=vn(),DP=u1(),ao=En(),BP=Qn(),ne=Zn(),h0=xn(),XP=1/uo;function UP(r,e,i,t,u,a,v,n){var o,c,f,l,q,p,m,_,N,I,O,A;if(A=1-r,m=n,_=n+v,a[_]=-1,dP(r)||r<0||r>1)return a[m]=NaN,a[_]=NaN,a;if(t){if(e<0||i<0)return a[m]=NaN,a[_]=NaN,a;if(e===0){if(i===0)return a[m]=NaN,a[_]=NaN,a;if(i>0)return a[m]=u?0:1,a}else if(i===0&&e>0)return a[m]=u?1:0,a}else if(e<=0||i<=0)return a[m]=NaN,a[_]=NaN,a;return r===0?(e===1?a[_]=1:a[_]=e<1?n1/2:to*2,u?(a[m]=t?1:v0(e,i),a):(a[m]=0,a)):r===1?(i===1?a[_]=1:a[_]=i<1?n1/2:to*2,u?a[m]=0:a[m]=t?1:v0(e,i),a):e===.5&&i===.5?(a[_]=XP*A2(A*r),O=eo(A2(u?A:r)),O/=CP,t||(O*=uo),a[m]=O,a):(e===1&&(p=i,i=e,e=p,p=A,A=r,r=p,u=!u),i===1?e===1?(a[m]=u?A:r,a[_]=1,a):(a[_]=e*ve(r,e-1),A<.5?O=u?-GP(e*ro(-A)):RP(e*ro(-A)):O=u?-(ve(r,e)-1):ve(r,e),t||(O/=e),a[m]=O,a):(io(e,i)<=1?(r>.5&&(p=i,i=e,e=p,p=A,A=r,r=p,u=!u),MP(e,i)<=1?e>=io(.2,i)||ve(r,e)<=.9?u?(f=-(t?1:v0(e,i)),u=!1,f=-h0(e,i,r,f,t,a,A)):f=h0(e,i,r,0,t,a,A):(p=i,i=e,e=p,p=A,A=r,r=p,u=!u,A>=.3?u?(f=-(t?1:v0(e,i)),u=!1,f=-h0(e,i,r,f,t,a,A)):f=h0(e,i,r,0,t,a,A):(t?c=1:c=g2(e+i,e,20),f=ne(e,i,r,A,20,t,a),u?(f-=t?1:v0(e,i),u=!1,f=-x0(e+20,i,r,A,f,c,t)):f=x0(e+20,i,r,A,f,c,t))):i<=1||r<.1&&ve(i*r,e)<=.7?u?(f=-(t?1:v0(e,i)),u=!1,f=-h0(e,i,r,f,t,a,A)):f=h0(e,i,r,0,t,a,A):(p=i,i=e,e=p,p=A,A=r,r=p,u=!u,A>=.3?u?(f=-(t?1:v0(e,i)),u=!1,f=-h0(e,i,r,f,t,a,A)):f=h0(e,i,r,0,t,a,A):e>=15?u?(f=-(t?1:v0(e,i)),u=!1,f=-x0(e,i,r,A,f,1,t)):f=x0(e,i,r,A,0,1,t):(t?c=1:c=g2(e+i,e,20),f=ne(e,i,r,A,20,t,a),u?(f-=t?1:v0(e,i),u=!1,f=-x0(e+20,i,r,A,f,c,t)):f=x0(e+20,i,r,A,f,c,t)))):(e<i?o=e-(e+i)*r:o=(e+i)*A-i,o<0&&(p=i,i=e,e=p,p=A,A=r,r=p,u=!u),i<40?v1(e)===e&&v1(i)===i&&e<WP-100?(N=e-1,I=i+N,f=BP(I,N,r,A),t||(f*=v0(e,i))):i*r<=.7?u?(f=-(t?1:v0(e,i)),u=!1,f=-h0(e,i,r,f,t,a,A)):f=h0(e,i,r,0,t,a,A):e>15?(I=v1(i),I===i&&(I-=1),l=i-I,t?c=1:c=g2(e+l,l,I),f=ne(l,e,A,r,I,t),f=x0(e,l,r,A,f,1,t),f/=c):t?(I=v1(i),l=i-I,l<=0&&(I-=1,l+=1),f=ne(l,e,A,r,I,t),f+=ne(e,l,r,A,20,t),u&&(f-=1),f=x0(e+20,l,r,A,f,1,t),u&&(f=-f,u=!1)):f=ao(e,i,r,A,t,a):f=ao(e,i,r,A,t,a)),a[_]<0&&(a[_]=DP(e,i,r,A,!0)),q=A*r,a[_]!==0&&(n1*q<a[_]?a[_]=n1/2:a[_]/=q),a[m]=u?(t?1:v0(e,i))-f:f,a))}so.exports=UP});var no=s((NY,vo)=>{"use strict";var VP=S2();function kP(r,e,i,t,u){return VP(r,e,i,t,u,[0,0],1,0)}vo.exports=kP});var E2=s((AY,fo)=>{"use strict";var bP=Cr(),oo=no(),KP=S2();bP(oo,"assign",KP);fo.exports=oo});var co=s((gY,lo)=>{"use strict";var QP=E2().assign;function YP(r,e,i,t,u){var a=[0,0];return t=t!==!1,u=u===!0,QP(r,e,i,t,u,a,1,0),a[0]}lo.exports=YP});var O2=s((SY,po)=>{"use strict";var ZP=co();po.exports=ZP});var mo=s((EY,qo)=>{"use strict";function $P(r){var e,i,t;return r===0?-.0005087819496582806:(r<0?e=-r:e=r,e<=1?(i=-.0005087819496582806+r*(-.008368748197417368+r*(.03348066254097446+r*(-.012692614766297404+r*(-.03656379714117627+r*(.02198786811111689+r*(.008226878746769157+r*(-.005387729650712429+r*(0+r*0)))))))),t=1+r*(-.9700050433032906+r*(-1.5657455823417585+r*(1.5622155839842302+r*(.662328840472003+r*(-.7122890234154284+r*(-.05273963823400997+r*(.07952836873415717+r*(-.0023339375937419+r*.0008862163904564247))))))))):(r=1/r,i=0+r*(0+r*(-.005387729650712429+r*(.008226878746769157+r*(.02198786811111689+r*(-.03656379714117627+r*(-.012692614766297404+r*(.03348066254097446+r*(-.008368748197417368+r*-.0005087819496582806)))))))),t=.0008862163904564247+r*(-.0023339375937419+r*(.07952836873415717+r*(-.05273963823400997+r*(-.7122890234154284+r*(.662328840472003+r*(1.5622155839842302+r*(-1.5657455823417585+r*(-.9700050433032906+r*1))))))))),i/t)}qo.exports=$P});var _o=s((OY,Io)=>{"use strict";function JP(r){var e,i,t;return r===0?-.20243350835593876:(r<0?e=-r:e=r,e<=1?(i=-.20243350835593876+r*(.10526468069939171+r*(8.3705032834312+r*(17.644729840837403+r*(-18.851064805871424+r*(-44.6382324441787+r*(17.445385985570866+r*(21.12946554483405+r*-3.6719225470772936))))))),t=1+r*(6.242641248542475+r*(3.971343795334387+r*(-28.66081804998+r*(-20.14326346804852+r*(48.560921310873994+r*(10.826866735546016+r*(-22.643693341313973+r*1.7211476576120028)))))))):(r=1/r,i=-3.6719225470772936+r*(21.12946554483405+r*(17.445385985570866+r*(-44.6382324441787+r*(-18.851064805871424+r*(17.644729840837403+r*(8.3705032834312+r*(.10526468069939171+r*-.20243350835593876))))))),t=1.7211476576120028+r*(-22.643693341313973+r*(10.826866735546016+r*(48.560921310873994+r*(-20.14326346804852+r*(-28.66081804998+r*(3.971343795334387+r*(6.242641248542475+r*1)))))))),i/t)}Io.exports=JP});var Ao=s((hY,No)=>{"use strict";function jP(r){var e,i,t;return r===0?-.1311027816799519:(r<0?e=-r:e=r,e<=1?(i=-.1311027816799519+r*(-.16379404719331705+r*(.11703015634199525+r*(.38707973897260434+r*(.3377855389120359+r*(.14286953440815717+r*(.029015791000532906+r*(.0021455899538880526+r*(-6794655751811263e-22+r*(28522533178221704e-24+r*-681149956853777e-24))))))))),t=1+r*(3.4662540724256723+r*(5.381683457070069+r*(4.778465929458438+r*(2.5930192162362027+r*(.848854343457902+r*(.15226433829533179+r*(.011059242293464892+r*(0+r*(0+r*0)))))))))):(r=1/r,i=-681149956853777e-24+r*(28522533178221704e-24+r*(-6794655751811263e-22+r*(.0021455899538880526+r*(.029015791000532906+r*(.14286953440815717+r*(.3377855389120359+r*(.38707973897260434+r*(.11703015634199525+r*(-.16379404719331705+r*-.1311027816799519))))))))),t=0+r*(0+r*(0+r*(.011059242293464892+r*(.15226433829533179+r*(.848854343457902+r*(2.5930192162362027+r*(4.778465929458438+r*(5.381683457070069+r*(3.4662540724256723+r*1)))))))))),i/t)}No.exports=jP});var So=s((TY,go)=>{"use strict";function zP(r){var e,i,t;return r===0?-.0350353787183178:(r<0?e=-r:e=r,e<=1?(i=-.0350353787183178+r*(-.0022242652921344794+r*(.018557330651423107+r*(.009508047013259196+r*(.0018712349281955923+r*(.00015754461742496055+r*(460469890584318e-20+r*(-2304047769118826e-25+r*26633922742578204e-28))))))),t=1+r*(1.3653349817554064+r*(.7620591645536234+r*(.22009110576413124+r*(.03415891436709477+r*(.00263861676657016+r*(7646752923027944e-20+r*(0+r*0)))))))):(r=1/r,i=26633922742578204e-28+r*(-2304047769118826e-25+r*(460469890584318e-20+r*(.00015754461742496055+r*(.0018712349281955923+r*(.009508047013259196+r*(.018557330651423107+r*(-.0022242652921344794+r*-.0350353787183178))))))),t=0+r*(0+r*(7646752923027944e-20+r*(.00263861676657016+r*(.03415891436709477+r*(.22009110576413124+r*(.7620591645536234+r*(1.3653349817554064+r*1)))))))),i/t)}go.exports=zP});var Oo=s((FY,Eo)=>{"use strict";function xP(r){var e,i,t;return r===0?-.016743100507663373:(r<0?e=-r:e=r,e<=1?(i=-.016743100507663373+r*(-.0011295143874558028+r*(.001056288621524929+r*(.00020938631748758808+r*(14962478375834237e-21+r*(44969678992770644e-23+r*(4625961635228786e-24+r*(-2811287356288318e-29+r*9905570997331033e-32))))))),t=1+r*(.5914293448864175+r*(.1381518657490833+r*(.016074608709367652+r*(.0009640118070051656+r*(27533547476472603e-21+r*(282243172016108e-21+r*(0+r*0)))))))):(r=1/r,i=9905570997331033e-32+r*(-2811287356288318e-29+r*(4625961635228786e-24+r*(44969678992770644e-23+r*(14962478375834237e-21+r*(.00020938631748758808+r*(.001056288621524929+r*(-.0011295143874558028+r*-.016743100507663373))))))),t=0+r*(0+r*(282243172016108e-21+r*(27533547476472603e-21+r*(.0009640118070051656+r*(.016074608709367652+r*(.1381518657490833+r*(.5914293448864175+r*1)))))))),i/t)}Eo.exports=xP});var yo=s((yY,Fo)=>{"use strict";var rd=P(),ho=W(),To=H(),ed=M(),id=V(),td=mo(),ad=_o(),ud=Ao(),sd=So(),vd=Oo(),nd=.08913147449493408,od=2.249481201171875,fd=.807220458984375,ld=.9399557113647461,cd=.9836282730102539;function pd(r){var e,i,t,u,a;return rd(r)?NaN:r===0?ed:r===2?id:r===1?0:r>2||r<0?NaN:(r>1?(e=-1,t=2-r):(e=1,t=r),r=1-t,r<=.5?(u=r*(r+10),a=td(r),e*(u*nd+u*a)):t>=.25?(u=ho(-2*To(t)),t-=.25,a=ad(t),e*(u/(od+a))):(t=ho(-To(t)),t<3?(i=t-1.125,a=ud(i),e*(fd*t+a*t)):t<6?(i=t-3,a=sd(i),e*(ld*t+a*t)):(i=t-6,a=vd(i),e*(cd*t+a*t))))}Fo.exports=pd});var Ir=s((wY,wo)=>{"use strict";var qd=yo();wo.exports=qd});var Ro=s((LY,Go)=>{"use strict";var md=j(),o1=w0(),c1=Mi(),Ho=[10680707,7228996,1387004,2578385,16069853,12639074,9804092,4427841,16666979,11263675,12935607,2387514,4345298,14681673,3074569,13734428,16653803,1880361,10960616,8533493,3062596,8710556,7349940,6258241,3772886,3769171,3798172,8675211,12450088,3874808,9961438,366607,15675153,9132554,7151469,3571407,2607881,12013382,4155038,6285869,7677882,13102053,15825725,473591,9065106,15363067,6271263,9264392,5636912,4652155,7056368,13614112,10155062,1944035,9527646,15080200,6658437,6231200,6832269,16767104,5075751,3212806,1398474,7579849,6349435,12618859],Id=[1.570796251296997,7549789415861596e-23,5390302529957765e-30,3282003415807913e-37,1270655753080676e-44,12293330898111133e-52,27337005381646456e-60,21674168387780482e-67],h2=16777216,T2=5960464477539063e-23,f1=c1(20),Lo=c1(20),l1=c1(20),Q=c1(20);function Po(r,e,i,t,u,a,v,n,o){var c,f,l,q,p,m,_,N,I;for(q=a,I=t[i],N=i,p=0;N>0;p++)f=T2*I|0,Q[p]=I-h2*f|0,I=t[N-1]+f,N-=1;if(I=o1(I,u),I-=8*md(I*.125),_=I|0,I-=_,l=0,u>0?(p=Q[i-1]>>24-u,_+=p,Q[i-1]-=p<<24-u,l=Q[i-1]>>23-u):u===0?l=Q[i-1]>>23:I>=.5&&(l=2),l>0){for(_+=1,c=0,p=0;p<i;p++)N=Q[p],c===0?N!==0&&(c=1,Q[p]=16777216-N):Q[p]=16777215-N;if(u>0)switch(u){case 1:Q[i-1]&=8388607;break;case 2:Q[i-1]&=4194303;break}l===2&&(I=1-I,c!==0&&(I-=o1(1,u)))}if(I===0){for(N=0,p=i-1;p>=a;p--)N|=Q[p];if(N===0){for(m=1;Q[a-m]===0;m++);for(p=i+1;p<=i+m;p++){for(o[n+p]=Ho[v+p],f=0,N=0;N<=n;N++)f+=r[N]*o[n+(p-N)];t[p]=f}return i+=m,Po(r,e,i,t,u,a,v,n,o)}}if(I===0)for(i-=1,u-=24;Q[i]===0;)i-=1,u-=24;else I=o1(I,-u),I>=h2?(f=T2*I|0,Q[i]=I-h2*f|0,i+=1,u+=24,Q[i]=f):Q[i]=I|0;for(f=o1(1,u),p=i;p>=0;p--)t[p]=f*Q[p],f*=T2;for(p=i;p>=0;p--){for(f=0,m=0;m<=q&&m<=i-p;m++)f+=Id[m]*t[p+m];l1[i-p]=f}for(f=0,p=i;p>=0;p--)f+=l1[p];for(l===0?e[0]=f:e[0]=-f,f=l1[0]-f,p=1;p<=i;p++)f+=l1[p];return l===0?e[1]=f:e[1]=-f,_&7}function _d(r,e,i,t){var u,a,v,n,o,c,f,l,q;for(a=4,n=t-1,v=(i-3)/24|0,v<0&&(v=0),c=i-24*(v+1),l=v-n,q=n+a,f=0;f<=q;f++)l<0?f1[f]=0:f1[f]=Ho[l],l+=1;for(f=0;f<=a;f++){for(u=0,l=0;l<=n;l++)u+=r[l]*f1[n+(f-l)];Lo[f]=u}return o=a,Po(r,e,o,Lo,c,a,v,n,f1)}Go.exports=_d});var Wo=s((HY,Mo)=>{"use strict";var Nd=Math.round;Mo.exports=Nd});var Do=s((PY,Co)=>{"use strict";var Ad=Wo();Co.exports=Ad});var Vo=s((dY,Uo)=>{"use strict";var gd=Do(),Bo=X(),Sd=.6366197723675814,Ed=1.5707963267341256,Od=6077100506506192e-26,hd=6077100506303966e-26,Td=20222662487959506e-37,Fd=20222662487111665e-37,yd=84784276603689e-45,Xo=2047;function wd(r,e,i){var t,u,a,v,n,o,c;return u=gd(r*Sd),v=r-u*Ed,n=u*Od,c=e>>20|0,i[0]=v-n,t=Bo(i[0]),o=c-(t>>20&Xo),o>16&&(a=v,n=u*hd,v=a-n,n=u*Td-(a-v-n),i[0]=v-n,t=Bo(i[0]),o=c-(t>>20&Xo),o>49&&(a=v,n=u*Fd,v=a-n,n=u*yd-(a-v-n),i[0]=v-n)),i[1]=v-i[0]-n,u}Uo.exports=wd});var bo=s((GY,ko)=>{"use strict";var Ld=x(),Hd=lr(),Pd=kr(),dd=X(),Gd=Ri(),Rd=Sr(),Md=Ro(),p1=Vo(),Wd=0,Cd=16777216,rr=1.5707963267341256,_r=6077100506506192e-26,q1=2*_r,m1=3*_r,I1=4*_r,Dd=598523,Bd=1072243195,Xd=1073928572,Ud=1074752122,Vd=1074977148,kd=1075183036,bd=1075388923,Kd=1075594811,Qd=1094263291,oe=[0,0,0],fe=[0,0];function Yd(r,e){var i,t,u,a,v,n,o,c;if(u=dd(r),a=u&Ld|0,a<=Bd)return e[0]=r,e[1]=0,0;if(a<=Ud)return(a&Pd)===Dd?p1(r,a,e):a<=Xd?r>0?(c=r-rr,e[0]=c-_r,e[1]=c-e[0]-_r,1):(c=r+rr,e[0]=c+_r,e[1]=c-e[0]+_r,-1):r>0?(c=r-2*rr,e[0]=c-q1,e[1]=c-e[0]-q1,2):(c=r+2*rr,e[0]=c+q1,e[1]=c-e[0]+q1,-2);if(a<=Kd)return a<=kd?a===Vd?p1(r,a,e):r>0?(c=r-3*rr,e[0]=c-m1,e[1]=c-e[0]-m1,3):(c=r+3*rr,e[0]=c+m1,e[1]=c-e[0]+m1,-3):a===bd?p1(r,a,e):r>0?(c=r-4*rr,e[0]=c-I1,e[1]=c-e[0]-I1,4):(c=r+4*rr,e[0]=c+I1,e[1]=c-e[0]+I1,-4);if(a<Qd)return p1(r,a,e);if(a>=Hd)return e[0]=NaN,e[1]=NaN,0;for(i=Gd(r),t=(a>>20)-1046,c=Rd(a-(t<<20|0),i),n=0;n<2;n++)oe[n]=c|0,c=(c-oe[n])*Cd;for(oe[2]=c,v=3;oe[v-1]===Wd;)v-=1;return o=Md(oe,fe,t,v,1),r<0?(e[0]=-fe[0],e[1]=-fe[1],-o):(e[0]=fe[0],e[1]=fe[1],o)}ko.exports=Yd});var F2=s((RY,Ko)=>{"use strict";var Zd=bo();Ko.exports=Zd});var Zo=s((MY,Yo)=>{"use strict";var $d=X(),y2=Kr(),Qo=Qr(),Jd=F2(),W0=[0,0],jd=2147483647,zd=1072243195,xd=1044381696,rG=2146435072;function eG(r){var e,i;if(e=$d(r),e&=jd,e<=zd)return e<xd?1:y2(r,0);if(e>=rG)return NaN;switch(i=Jd(r,W0),i&3){case 0:return y2(W0[0],W0[1]);case 1:return-Qo(W0[0],W0[1]);case 2:return-y2(W0[0],W0[1]);default:return Qo(W0[0],W0[1])}}Yo.exports=eG});var Jo=s((WY,$o)=>{"use strict";var iG=Zo();$o.exports=iG});var xo=s((CY,zo)=>{"use strict";var tG=x(),aG=lr(),uG=X(),jo=Kr(),w2=Qr(),sG=F2(),vG=1072243195,nG=1045430272,C0=[0,0];function oG(r){var e,i;if(e=uG(r),e&=tG,e<=vG)return e<nG?r:w2(r,0);if(e>=aG)return NaN;switch(i=sG(r,C0),i&3){case 0:return w2(C0[0],C0[1]);case 1:return jo(C0[0],C0[1]);case 2:return-w2(C0[0],C0[1]);default:return-jo(C0[0],C0[1])}}zo.exports=oG});var L2=s((DY,rf)=>{"use strict";var fG=xo();rf.exports=fG});var af=s((BY,tf)=>{"use strict";var lG=P(),cG=I0(),ef=Jo(),H2=L2(),pG=y(),le=Er(),ce=r0();function qG(r){var e,i;return lG(r)?NaN:cG(r)?NaN:(i=r%2,e=pG(i),e===0||e===1?le(0,i):e<.25?H2(ce*i):e<.75?(e=.5-e,le(ef(ce*e),i)):e<1.25?(i=le(1,i)-i,H2(ce*i)):e<1.75?(e-=1.5,-le(ef(ce*e),i)):(i-=le(2,i),H2(ce*i)))}tf.exports=qG});var sf=s((XY,uf)=>{"use strict";var mG=af();uf.exports=mG});var nf=s((UY,vf)=>{"use strict";function IG(r){return r===0?.06735230105312927:.06735230105312927+r*(.007385550860814029+r*(.0011927076318336207+r*(.00022086279071390839+r*25214456545125733e-21)))}vf.exports=IG});var ff=s((VY,of)=>{"use strict";function _G(r){return r===0?.020580808432516733:.020580808432516733+r*(.0028905138367341563+r*(.0005100697921535113+r*(.00010801156724758394+r*44864094961891516e-21)))}of.exports=_G});var cf=s((kY,lf)=>{"use strict";function NG(r){return r===0?1.3920053346762105:1.3920053346762105+r*(.7219355475671381+r*(.17193386563280308+r*(.01864591917156529+r*(.0007779424963818936+r*7326684307446256e-21))))}lf.exports=NG});var qf=s((bY,pf)=>{"use strict";function AG(r){return r===0?.21498241596060885:.21498241596060885+r*(.325778796408931+r*(.14635047265246445+r*(.02664227030336386+r*(.0018402845140733772+r*3194753265841009e-20))))}pf.exports=AG});var If=s((KY,mf)=>{"use strict";function gG(r){return r===0?-.032788541075985965:-.032788541075985965+r*(.006100538702462913+r*(-.0014034646998923284+r*.00031563207090362595))}mf.exports=gG});var Nf=s((QY,_f)=>{"use strict";function SG(r){return r===0?.01797067508118204:.01797067508118204+r*(-.0036845201678113826+r*(.000881081882437654+r*-.00031275416837512086))}_f.exports=SG});var gf=s((YY,Af)=>{"use strict";function EG(r){return r===0?-.010314224129834144:-.010314224129834144+r*(.0022596478090061247+r*(-.0005385953053567405+r*.0003355291926355191))}Af.exports=EG});var Ef=s((ZY,Sf)=>{"use strict";function OG(r){return r===0?.6328270640250934:.6328270640250934+r*(1.4549225013723477+r*(.9777175279633727+r*(.22896372806469245+r*.013381091853678766)))}Sf.exports=OG});var hf=s(($Y,Of)=>{"use strict";function hG(r){return r===0?2.4559779371304113:2.4559779371304113+r*(2.128489763798934+r*(.7692851504566728+r*(.10422264559336913+r*.003217092422824239)))}Of.exports=hG});var Ff=s((JY,Tf)=>{"use strict";function TG(r){return r===0?.08333333333333297:.08333333333333297+r*(-.0027777777772877554+r*(.0007936505586430196+r*(-.00059518755745034+r*(.0008363399189962821+r*-.0016309293409657527))))}Tf.exports=TG});var Lf=s((jY,wf)=>{"use strict";var FG=P(),yG=I0(),wG=y(),Pr=H(),LG=Xr(),HG=sf(),PG=r0(),P2=M(),dG=nf(),GG=ff(),RG=cf(),MG=qf(),WG=If(),CG=Nf(),DG=gf(),BG=Ef(),XG=hf(),UG=Ff(),VG=.07721566490153287,kG=.3224670334241136,bG=1,KG=-.07721566490153287,QG=.48383612272381005,YG=-.1475877229945939,ZG=.06462494023913339,$G=-.07721566490153287,JG=1,jG=.4189385332046727,_1=1.4616321449683622,zG=4503599627370496,xG=0x400000000000000,rR=8470329472543003e-37,yf=1.4616321449683622,eR=-.12148629053584961,iR=-3638676997039505e-33;function tR(r){var e,i,t,u,a,v,n,o,c,f,l,q,p;if(FG(r)||yG(r))return r;if(r===0)return P2;if(r<0?(e=!0,r=-r):e=!1,r<rR)return-Pr(r);if(e){if(r>=zG||(c=HG(r),c===0))return P2;i=Pr(PG/wG(c*r))}if(r===1||r===2)return 0;if(r<2)switch(r<=.9?(p=-Pr(r),r>=_1-1+.27?(l=1-r,t=0):r>=_1-1-.27?(l=r-(yf-1),t=1):(l=r,t=2)):(p=0,r>=_1+.27?(l=2-r,t=0):r>=_1-.27?(l=r-yf,t=1):(l=r-1,t=2)),t){case 0:q=l*l,v=VG+q*dG(q),a=q*(kG+q*GG(q)),n=l*v+a,p+=n-.5*l;break;case 1:q=l*l,f=q*l,v=QG+f*WG(f),a=YG+f*CG(f),u=ZG+f*DG(f),n=q*v-(iR-f*(a+l*u)),p+=eR+n;break;case 2:v=l*($G+l*BG(l)),a=JG+l*XG(l),p+=-.5*l+v/a;break}else if(r<8)switch(t=LG(r),l=r-t,n=l*(KG+l*MG(l)),o=bG+l*RG(l),p=.5*l+n/o,q=1,t){case 7:q*=l+6;case 6:q*=l+5;case 5:q*=l+4;case 4:q*=l+3;case 3:q*=l+2,p+=Pr(q)}else r<xG?(c=Pr(r),q=1/r,l=q*q,f=jG+q*UG(l),p=(r-.5)*(c-1)+f):p=r*(Pr(r)-1);return e&&(p=i-p),p}wf.exports=tR});var N1=s((zY,Hf)=>{"use strict";var aR=Lf();Hf.exports=aR});var df=s((xY,Pf)=>{"use strict";var uR=d();function sR(r,e){var i,t,u,a;if(u=uR(-e),t=u,t!==0)for(i=t,a=1;a<r;++a)i/=a,i*=e,t+=i;return t}Pf.exports=sR});var Mf=s((rZ,Rf)=>{"use strict";var vR=Fr(),Gf=W(),nR=d(),oR=r0();function fR(r,e){var i,t,u,a,v;if(a=vR(Gf(e)),a!==0&&r>1){for(t=nR(-e)/Gf(oR*e),t*=e,i=.5,t/=i,u=t,v=2;v<r;++v)t/=v-i,t*=e,u+=t;a+=u}return a}Rf.exports=fR});var Bf=s((eZ,Df)=>{"use strict";var dr=d(),A1=D(),lR=H(),Wf=u0(),Cf=M0();function cR(r,e){var i,t;return t=r*lR(e),e>=1?t<Wf&&-e>Cf?i=A1(e,r)*dr(-e):r>=1?i=A1(e/dr(e/r),r):i=dr(t-e):t>Cf?i=A1(e,r)*dr(-e):e/r<Wf?i=A1(e/dr(e/r),r):i=dr(t-e),i}Df.exports=cR});var Uf=s((iZ,Xf)=>{"use strict";function pR(r){return r===0?-.3333333333333333:-.3333333333333333+r*(.08333333333333333+r*(-.014814814814814815+r*(.0011574074074074073+r*(.0003527336860670194+r*(-.0001787551440329218+r*(3919263178522438e-20+r*(-21854485106799924e-22+r*(-185406221071516e-20+r*(8296711340953087e-22+r*(-17665952736826078e-23+r*(6707853543401498e-24+r*(10261809784240309e-24+r*(-4382036018453353e-24+r*914769958223679e-24)))))))))))))}Xf.exports=pR});var kf=s((tZ,Vf)=>{"use strict";function qR(r){return r===0?-.001851851851851852:-.001851851851851852+r*(-.003472222222222222+r*(.0026455026455026454+r*(-.0009902263374485596+r*(.00020576131687242798+r*(-4018775720164609e-22+r*(-18098550334489977e-21+r*(764916091608111e-20+r*(-16120900894563446e-22+r*(4647127802807434e-24+r*(1378633446915721e-22+r*(-5752545603517705e-23+r*11951628599778148e-24)))))))))))}Vf.exports=qR});var Kf=s((aZ,bf)=>{"use strict";function mR(r){return r===0?.004133597883597883:.004133597883597883+r*(-.0026813271604938273+r*(.0007716049382716049+r*(20093878600823047e-22+r*(-.00010736653226365161+r*(52923448829120125e-21+r*(-12760635188618728e-21+r*(3423578734096138e-23+r*(13721957309062932e-22+r*(-6298992138380055e-22+r*14280614206064242e-23)))))))))}bf.exports=mR});var Yf=s((uZ,Qf)=>{"use strict";function IR(r){return r===0?.0006494341563786008:.0006494341563786008+r*(.00022947209362139917+r*(-.0004691894943952557+r*(.00026772063206283885+r*(-7561801671883977e-20+r*(-2396505113867297e-22+r*(11082654115347302e-21+r*(-56749528269915965e-22+r*14230900732435883e-22)))))))}Qf.exports=IR});var $f=s((sZ,Zf)=>{"use strict";function _R(r){return r===0?-.0008618882909167117:-.0008618882909167117+r*(.0007840392217200666+r*(-.0002990724803031902+r*(-14638452578843418e-22+r*(6641498215465122e-20+r*(-3968365047179435e-20+r*11375726970678419e-21)))))}Zf.exports=_R});var jf=s((vZ,Jf)=>{"use strict";function NR(r){return r===0?-.00033679855336635813:-.00033679855336635813+r*(-6972813758365858e-20+r*(.0002772753244959392+r*(-.00019932570516188847+r*(6797780477937208e-20+r*(1419062920643967e-22+r*(-13594048189768693e-21+r*(8018470256334202e-21+r*-2291481176508095e-21)))))))}Jf.exports=NR});var xf=s((nZ,zf)=>{"use strict";function AR(r){return r===0?.0005313079364639922:.0005313079364639922+r*(-.0005921664373536939+r*(.0002708782096718045+r*(7902353232660328e-22+r*(-8153969367561969e-20+r*(561168275310625e-19+r*-18329116582843375e-21)))))}zf.exports=AR});var el=s((oZ,rl)=>{"use strict";function gR(r){return r===0?.00034436760689237765:.00034436760689237765+r*(5171790908260592e-20+r*(-.00033493161081142234+r*(.0002812695154763237+r*-.00010976582244684731)))}rl.exports=gR});var tl=s((fZ,il)=>{"use strict";function SR(r){return r===0?-.0006526239185953094:-.0006526239185953094+r*(.0008394987206720873+r*-.000438297098541721)}il.exports=SR});var ul=s((lZ,al)=>{"use strict";var ER=N0(),OR=Je(),hR=Fr(),d2=W(),TR=d(),FR=je(),yR=Uf(),wR=kf(),LR=Kf(),HR=Yf(),PR=$f(),dR=jf(),GR=xf(),RR=el(),MR=tl(),c0=[0,0,0,0,0,0,0,0,0,0];function WR(r,e){var i,t,u,a,v;return t=(e-r)/r,u=-OR(t),a=r*u,v=d2(2*u),e<r&&(v=-v),c0[0]=yR(v),c0[1]=wR(v),c0[2]=LR(v),c0[3]=HR(v),c0[4]=PR(v),c0[5]=dR(v),c0[6]=GR(v),c0[7]=RR(v),c0[8]=MR(v),c0[9]=-.0005967612901927463,i=ER(c0,1/r),i*=TR(-a)/d2(FR*r),e<r&&(i=-i),i+=hR(d2(a))/2,i}al.exports=WR});var vl=s((cZ,sl)=>{"use strict";function CR(r,e){var i=1,t=r,u=e;return a;function a(){var v=i;return t+=1,i*=u/t,v}}sl.exports=CR});var ol=s((pZ,nl)=>{"use strict";var DR=Z0(),BR=vl();function XR(r,e,i){var t,u;return i=i||0,u=BR(r,e),t=DR(u,{initialValue:i}),t}nl.exports=XR});var ll=s((qZ,fl)=>{"use strict";function UR(r){var e,i,t;return r===0?1/0:(r<0?e=-r:e=r,e<=1?(i=709811.662581658+r*(679979.8474157227+r*(293136.7857211597+r*(74887.54032914672+r*(12555.290582413863+r*(1443.4299244417066+r*(115.24194596137347+r*(6.309239205732627+r*(.22668404630224365+r*(.004826466289237662+r*4624429436045379e-20))))))))),t=0+r*(362880+r*(1026576+r*(1172700+r*(723680+r*(269325+r*(63273+r*(9450+r*(870+r*(45+r*1)))))))))):(r=1/r,i=4624429436045379e-20+r*(.004826466289237662+r*(.22668404630224365+r*(6.309239205732627+r*(115.24194596137347+r*(1443.4299244417066+r*(12555.290582413863+r*(74887.54032914672+r*(293136.7857211597+r*(679979.8474157227+r*709811.662581658))))))))),t=1+r*(45+r*(870+r*(9450+r*(63273+r*(269325+r*(723680+r*(1172700+r*(1026576+r*(362880+r*0)))))))))),i/t)}fl.exports=UR});var pl=s((mZ,cl)=>{"use strict";var VR=ll();cl.exports=VR});var ml=s((IZ,ql)=>{"use strict";var kR=pl();ql.exports=kR});var Nl=s((_Z,_l)=>{"use strict";var bR=ml(),KR=N1(),QR=a0(),YR=i0(),ZR=W(),$R=y(),er=d(),pe=D(),G2=Q0(),R2=P0(),Il=H(),g1=u0(),qe=M0(),M2=qr(),JR=K0();function jR(r,e){var i,t,u,a,v,n,o;return u=r+M2-.5,o=(e-r-M2+.5)/u,r<1?e<=qe?er(r*Il(e)-e-KR(r)):pe(e,r)*er(-e)/QR(r):($R(o*o*r)<=100&&r>150?(i=r*(YR(o)-o)+e*(.5-M2)/u,i=er(i)):(a=r*Il(e/u),v=r-e,R2(a,v)<=qe||G2(a,v)>=g1?(t=v/r,R2(a,v)/2>qe&&G2(a,v)/2<g1?(n=pe(e/u,r/2)*er(v/2),i=n*n):R2(a,v)/4>qe&&G2(a,v)/4<g1&&e>r?(n=pe(e/u,r/4)*er(v/4),i=n*n,i*=i):t>qe&&t<g1?i=pe(e*er(t)/u,r):i=er(a+v)):i=pe(e/u,r)*er(v)),i*=ZR(u/JR)/bR(r),i)}_l.exports=jR});var Sl=s((NZ,gl)=>{"use strict";var Al=Ni();function zR(r){return r>0?Al(r-1):Al(r+1)}gl.exports=zR});var W2=s((AZ,El)=>{"use strict";var xR=Sl();El.exports=xR});var Tl=s((gZ,hl)=>{"use strict";var Ol=W2(),rM=Er(),eM=V(),S1=M();function iM(r,e){return e===eM?S1:e===S1?0:e>0?Ol(e)?r:0:Ol(e)?rM(S1,r):S1}hl.exports=iM});var yl=s((SZ,Fl)=>{"use strict";var tM=x(),aM=X(),uM=1072693247,E1=1e300,O1=1e-300;function sM(r,e){var i,t;return t=aM(r),i=t&tM,i<=uM?e<0?E1*E1:O1*O1:e>0?E1*E1:O1*O1}Fl.exports=sM});var Hl=s((EZ,Ll)=>{"use strict";var vM=y(),wl=M();function nM(r,e){return r===-1?(r-r)/(r-r):r===1?1:vM(r)<1==(e===wl)?0:wl}Ll.exports=nM});var dl=s((OZ,Pl)=>{"use strict";function oM(r){return r===0?.5999999999999946:.5999999999999946+r*(.4285714285785502+r*(.33333332981837743+r*(.272728123808534+r*(.23066074577556175+r*.20697501780033842))))}Pl.exports=oM});var Wl=s((hZ,Ml)=>{"use strict";var fM=X(),h1=_0(),Gl=X0(),lM=m0(),cM=dl(),pM=1048575,Rl=1048576,qM=1072693248,mM=536870912,IM=524288,_M=20,NM=9007199254740992,AM=.9617966939259756,gM=.9617967009544373,SM=-7028461650952758e-24,EM=[1,1.5],OM=[0,.5849624872207642],hM=[0,1350039202129749e-23];function TM(r,e,i){var t,u,a,v,n,o,c,f,l,q,p,m,_,N,I,O,A,h,S,T,g,F;return T=0,i<Rl&&(e*=NM,T-=53,i=fM(e)),T+=(i>>_M)-lM|0,g=i&pM|0,i=g|qM|0,g<=235662?F=0:g<767610?F=1:(F=0,T+=1,i-=Rl),e=Gl(e,i),f=EM[F],h=e-f,S=1/(e+f),u=h*S,v=h1(u,0),t=(i>>1|mM)+IM,t+=F<<18,o=Gl(0,t),c=e-(o-f),n=S*(h-v*o-v*c),a=u*u,A=a*a*cM(a),A+=n*(v+u),a=v*v,o=3+a+A,o=h1(o,0),c=A-(o-3-a),h=v*o,S=n*o+c*u,q=h+S,q=h1(q,0),p=S-(q-h),m=gM*q,_=SM*q+p*AM+hM[F],l=OM[F],O=T,N=m+_+l+O,N=h1(N,0),I=_-(N-O-l-m),r[0]=N,r[1]=I,r}Ml.exports=TM});var Dl=s((TZ,Cl)=>{"use strict";function FM(r){return r===0?.5:.5+r*(-.3333333333333333+r*.25)}Cl.exports=FM});var Xl=s((FZ,Bl)=>{"use strict";var yM=_0(),wM=Dl(),LM=1.4426950408889634,HM=1.4426950216293335,PM=19259629911266175e-24;function dM(r,e){var i,t,u,a,v,n;return u=e-1,a=u*u*wM(u),v=HM*u,n=u*PM-a*LM,t=v+n,t=yM(t,0),i=n-(t-v),r[0]=t,r[1]=i,r}Bl.exports=dM});var Vl=s((yZ,Ul)=>{"use strict";function GM(r){return r===0?.16666666666666602:.16666666666666602+r*(-.0027777777777015593+r*(6613756321437934e-20+r*(-16533902205465252e-22+r*41381367970572385e-24)))}Ul.exports=GM});var $l=s((wZ,Zl)=>{"use strict";var RM=X(),kl=X0(),MM=_0(),WM=Vr(),CM=w0(),DM=Ei(),bl=m0(),Kl=x(),Ql=kr(),BM=Vl(),Yl=1048576,XM=1071644672,me=20,UM=.6931471824645996,VM=-1904654299957768e-24;function kM(r,e,i){var t,u,a,v,n,o,c,f,l,q,p;return q=r&Kl|0,p=(q>>me)-bl|0,l=0,q>XM&&(l=r+(Yl>>p+1)>>>0,p=((l&Kl)>>me)-bl|0,t=(l&~(Ql>>p))>>>0,a=kl(0,t),l=(l&Ql|Yl)>>me-p>>>0,r<0&&(l=-l),e-=a),a=i+e,a=MM(a,0),n=a*UM,o=(i-(a-e))*DM+a*VM,f=n+o,c=o-(f-n),a=f*f,u=f-a*BM(a),v=f*u/(u-2)-(c+f*c),f=1-(v-f),r=RM(f),r=WM(r),r+=l<<me>>>0,r>>me<=0?f=CM(f,l):f=kl(f,r),f}Zl.exports=kM});var sc=s((LZ,uc)=>{"use strict";var Jl=P(),jl=W2(),zl=I0(),bM=L0(),xl=W(),KM=y(),C2=Ur(),QM=_0(),rc=Vr(),YM=V(),ZM=M(),D2=x(),$M=Tl(),JM=yl(),jM=Hl(),zM=Wl(),xM=Xl(),rW=$l(),eW=1072693247,iW=1105199104,tW=1139802112,ec=1083179008,aW=1072693248,uW=1083231232,sW=3230714880,ic=31,ir=1e300,tr=1e-300,vW=8008566259537294e-32,D0=[0,0],tc=[0,0];function ac(r,e){var i,t,u,a,v,n,o,c,f,l,q,p,m,_,N,I;if(Jl(r)||Jl(e))return NaN;if(C2.assign(e,D0,1,0),n=D0[0],o=D0[1],o===0){if(e===0)return 1;if(e===1)return r;if(e===-1)return 1/r;if(e===.5)return xl(r);if(e===-.5)return 1/xl(r);if(e===2)return r*r;if(e===3)return r*r*r;if(e===4)return r*=r,r*r;if(zl(e))return jM(r,e)}if(C2.assign(r,D0,1,0),a=D0[0],v=D0[1],v===0){if(a===0)return $M(r,e);if(r===1)return 1;if(r===-1&&jl(e))return-1;if(zl(r))return r===YM?ac(-0,-e):e<0?0:ZM}if(r<0&&bM(e)===!1)return(r-r)/(r-r);if(u=KM(r),i=a&D2|0,t=n&D2|0,c=a>>>ic|0,f=n>>>ic|0,c&&jl(e)?c=-1:c=1,t>iW){if(t>tW)return JM(r,e);if(i<eW)return f===1?c*ir*ir:c*tr*tr;if(i>aW)return f===0?c*ir*ir:c*tr*tr;m=xM(tc,u)}else m=zM(tc,u,i);if(l=QM(e,0),p=(e-l)*m[0]+e*m[1],q=l*m[0],_=p+q,C2.assign(_,D0,1,0),N=rc(D0[0]),I=rc(D0[1]),N>=ec){if((N-ec|I)!==0||p+vW>_-q)return c*ir*ir}else if((N&D2)>=uW&&((N-sW|I)!==0||p<=_-q))return c*tr*tr;return _=rW(N,q,p),c*_}uc.exports=ac});var nc=s((HZ,vc)=>{"use strict";var nW=sc();vc.exports=nW});var fc=s((PZ,oc)=>{"use strict";function oW(r){return r===0?.08333333333334822:.08333333333334822+r*(.0034722222160545866+r*(-.0026813261780578124+r*(-.00022954996161337813+r*.0007873113957930937)))}oc.exports=oW});var pc=s((dZ,cc)=>{"use strict";var fW=pr(),lc=nc(),lW=d(),cW=fc(),pW=143.01608;function qW(r){var e,i,t;return e=1/r,e=1+e*cW(e),i=lW(r),r>pW?(t=lc(r,.5*r-.25),i=t*(t/i)):i=lc(r,r-.5)/i,fW*i*e}cc.exports=qW});var mc=s((GZ,qc)=>{"use strict";var mW=Ui();function IW(r,e){return e/((1+mW*r)*r)}qc.exports=IW});var _c=s((RZ,Ic)=>{"use strict";function _W(r){var e,i,t;return r===0?1:(r<0?e=-r:e=r,e<=1?(i=1+r*(.4942148268014971+r*(.20744822764843598+r*(.04763678004571372+r*(.010421379756176158+r*(.0011913514700658638+r*(.00016011952247675185+r*0)))))),t=1+r*(.0714304917030273+r*(-.23459179571824335+r*(.035823639860549865+r*(.011813978522206043+r*(-.004456419138517973+r*(.0005396055804933034+r*-23158187332412014e-21))))))):(r=1/r,i=0+r*(.00016011952247675185+r*(.0011913514700658638+r*(.010421379756176158+r*(.04763678004571372+r*(.20744822764843598+r*(.4942148268014971+r*1)))))),t=-23158187332412014e-21+r*(.0005396055804933034+r*(-.004456419138517973+r*(.011813978522206043+r*(.035823639860549865+r*(-.23459179571824335+r*(.0714304917030273+r*1))))))),i/t)}Ic.exports=_W});var Tc=s((MZ,hc)=>{"use strict";var NW=P(),AW=L0(),gW=de(),Nc=y(),SW=j(),EW=L2(),Ac=M(),gc=V(),Sc=r0(),Ec=pc(),Oc=mc(),OW=_c();function hW(r){var e,i,t,u;if(AW(r)&&r<0||r===gc||NW(r))return NaN;if(r===0)return gW(r)?gc:Ac;if(r>171.61447887182297)return Ac;if(r<-170.5674972726612)return 0;if(i=Nc(r),i>33)return r>=0?Ec(r):(t=SW(i),(t&1)===0?e=-1:e=1,u=i-t,u>.5&&(t+=1,u=i-t),u=i*EW(Sc*u),e*Sc/(Nc(u)*Ec(i)));for(u=1;r>=3;)r-=1,u*=r;for(;r<0;){if(r>-1e-9)return Oc(r,u);u/=r,r+=1}for(;r<2;){if(r<1e-9)return Oc(r,u);u/=r,r+=1}return r===2?u:(r-=2,u*OW(r))}hc.exports=hW});var yc=s((WZ,Fc)=>{"use strict";var TW=Tc();Fc.exports=TW});var Lc=s((CZ,wc)=>{"use strict";function FW(r){var e,i,t;return r===0?-.01803556856784494:(r<0?e=-r:e=r,e<=1?(i=-.01803556856784494+r*(.02512664961998968+r*(.049410315156753225+r*(.0172491608709614+r*(-.0002594535632054381+r*(-.0005410098692152044+r*(-3245886498259485e-20+r*0)))))),t=1+r*(1.962029871977952+r*(1.4801966942423133+r*(.5413914320717209+r*(.09885042511280101+r*(.008213096746488934+r*(.00022493629192211576+r*-22335276320861708e-23))))))):(r=1/r,i=0+r*(-3245886498259485e-20+r*(-.0005410098692152044+r*(-.0002594535632054381+r*(.0172491608709614+r*(.049410315156753225+r*(.02512664961998968+r*-.01803556856784494)))))),t=-22335276320861708e-23+r*(.00022493629192211576+r*(.008213096746488934+r*(.09885042511280101+r*(.5413914320717209+r*(1.4801966942423133+r*(1.962029871977952+r*1))))))),i/t)}wc.exports=FW});var Pc=s((DZ,Hc)=>{"use strict";function yW(r){var e,i,t;return r===0?.04906224540690395:(r<0?e=-r:e=r,e<=1?(i=.04906224540690395+r*(-.09691175301595212+r*(-.4149833583594954+r*(-.4065671242119384+r*(-.1584135863906922+r*(-.024014982064857155+r*-.0010034668769627955))))),t=1+r*(3.0234982984646304+r*(3.4873958536072385+r*(1.9141558827442668+r*(.5071377386143635+r*(.05770397226904519+r*.001957681026011072)))))):(r=1/r,i=-.0010034668769627955+r*(-.024014982064857155+r*(-.1584135863906922+r*(-.4065671242119384+r*(-.4149833583594954+r*(-.09691175301595212+r*.04906224540690395))))),t=.001957681026011072+r*(.05770397226904519+r*(.5071377386143635+r*(1.9141558827442668+r*(3.4873958536072385+r*(3.0234982984646304+r*1)))))),i/t)}Hc.exports=yW});var Gc=s((BZ,dc)=>{"use strict";function wW(r){var e,i,t;return r===0?-.029232972183027003:(r<0?e=-r:e=r,e<=1?(i=-.029232972183027003+r*(.14421626775719232+r*(-.14244039073863127+r*(.05428096940550536+r*(-.008505359768683364+r*(.0004311713426792973+r*0))))),t=1+r*(-1.5016935605448505+r*(.846973248876495+r*(-.22009515181499575+r*(.02558279715597587+r*(-.0010066679553914337+r*-8271935218912905e-22)))))):(r=1/r,i=0+r*(.0004311713426792973+r*(-.008505359768683364+r*(.05428096940550536+r*(-.14244039073863127+r*(.14421626775719232+r*-.029232972183027003))))),t=-8271935218912905e-22+r*(-.0010066679553914337+r*(.02558279715597587+r*(-.22009515181499575+r*(.846973248876495+r*(-1.5016935605448505+r*1)))))),i/t)}dc.exports=wW});var Mc=s((XZ,Rc)=>{"use strict";var B2=H(),LW=t0(),HW=Lc(),PW=Pc(),dW=Gc(),GW=.15896368026733398,RW=.5281534194946289,MW=.45201730728149414;function WW(r,e,i){var t,u,a,v;if(r<LW)return-B2(r);if(e===0||i===0)return 0;if(u=0,r>2){if(r>=3){do r-=1,i-=1,u+=B2(r);while(r>=3);i=r-2}return a=i*(r+1),v=HW(i),u+=a*GW+a*v,u}return r<1&&(u+=-B2(r),i=e,e=r,r+=1),r<=1.5?(a=PW(e),t=e*i,u+=t*RW+t*a,u):(a=i*e,v=dW(-i),u+=a*MW+a*v,u)}Rc.exports=WW});var Xc=s((UZ,Bc)=>{"use strict";var Wc=yc(),Cc=U0(),CW=i0(),DW=P(),Dc=Mc();function BW(r){return DW(r)?NaN:r<0?r<-.5?Wc(1+r)-1:Cc(-CW(r)+Dc(r+2,r+1,r)):r<2?Cc(Dc(r+1,r,r-1)):Wc(1+r)-1}Bc.exports=BW});var Vc=s((VZ,Uc)=>{"use strict";var XW=Xc();Uc.exports=XW});var bc=s((kZ,kc)=>{"use strict";function UW(r,e){var i,t,u,a;return i=-e,e=-e,t=r+1,u=1,v;function v(){return a=i/t,i*=e,u+=1,i/=u,t+=1,a}}kc.exports=UW});var Qc=s((bZ,Kc)=>{"use strict";var VW=i2(),kW=Z0(),bW=Vc(),KW=bc();function QW(r,e,i){var t,u,a,v,n;return u=bW(r),a=(u+1)/r,v=VW(e,r),u-=v,u/=r,n=KW(r,e),v+=1,t=i?a:0,u=-v*kW(n,{initialValue:(t-u)/v}),i&&(u=-u),[u,a]}Kc.exports=QW});var Zc=s((KZ,Yc)=>{"use strict";function YW(r,e){var i=e-r+1,t=r,u=0;return a;function a(){return u+=1,i+=2,[u*(t-u),i]}}Yc.exports=YW});var Jc=s((QZ,$c)=>{"use strict";var ZW=r1(),$W=Zc();function JW(r,e){var i=$W(r,e);return 1/(e-r+1+ZW(i))}$c.exports=JW});var sp=s((YZ,up)=>{"use strict";var jW=N1(),zW=j(),Ie=a0(),jc=y(),xW=d(),zc=D(),p0=H(),rC=Qi(),xc=d0(),eC=pr(),rp=u0(),iC=M(),tC=df(),aC=Mf(),ep=Bf(),uC=ul(),X2=ol(),ip=Nl(),sC=Qc(),tp=Jc(),vC=170;function ap(r,e,i,t){var u,a,v,n,o,c,f,l,q,p,m,_,N,I,O;if(r<0||e<=0)return NaN;if(a=i===void 0?!0:i,l=t,q=0,e>=vC&&!a)return l&&e*4<r?(q=e*p0(r)-r,q+=p0(tp(e,r))):!l&&e>4*r?(q=e*p0(r)-r,n=0,q+=p0(X2(e,r,n)/e)):(q=ap(e,r,!0,l),q===0?l?(q=1+1/(12*e)+1/(288*e*e),q=p0(q)-e+(e-.5)*p0(e),q+=p0(eC)):(q=e*p0(r)-r,n=0,q+=p0(X2(e,r,n)/e)):q=p0(q)+jW(e)),q>rp?iC:xW(q);switch(f=e<30&&e<=r+1&&r<rp,f?(I=zW(e),p=I===e,o=p?!1:jc(I-e)===.5):p=o=!1,p&&r>.6?(l=!l,v=0):o&&r>.2?(l=!l,v=1):r<rC&&e>1?v=6:r<.5?-.4/p0(r)<e?v=2:v=3:r<1.1?r*.75<e?v=2:v=3:(c=!1,a&&e>20&&(m=jc((r-e)/e),e>200?20/e>m*m&&(c=!0):m<.4&&(c=!0)),c?v=5:r-1/(3*r)<e?v=2:(v=4,l=!l)),v){case 0:q=tC(e,r),a===!1&&(q*=Ie(e));break;case 1:q=aC(e,r),a===!1&&(q*=Ie(e));break;case 2:q=a?ip(e,r):ep(e,r),q!==0&&(n=0,u=!1,l&&(n=a?1:Ie(e),a||q>=1||xc*q>n?(n/=q,a||e<1||xc/e>n?(n*=-e,u=!0):n=0):n=0)),q*=X2(e,r,n)/e,u&&(l=!1,q=-q);break;case 3:l=!l,N=sC(e,r,l),q=N[0],O=N[1],l=!1,a&&(q/=O);break;case 4:q=a?ip(e,r):ep(e,r),q!==0&&(q*=tp(e,r));break;case 5:q=uC(e,r),r>=e&&(l=!l);break;case 6:q=a?zc(r,e)/Ie(e+1):zc(r,e)/e,q*=1-e*r/(e+1);break}return a&&q>1&&(q=1),l&&(_=a?1:Ie(e),q=_-q),q}up.exports=ap});var np=s((ZZ,vp)=>{"use strict";var nC=sp();vp.exports=nC});var fp=s(($Z,op)=>{var _e=1e3,Ne=_e*60,Ae=Ne*60,ge=Ae*24,oC=ge*365.25;op.exports=function(r,e){e=e||{};var i=typeof r;if(i==="string"&&r.length>0)return fC(r);if(i==="number"&&isNaN(r)===!1)return e.long?cC(r):lC(r);throw new Error("val is not a non-empty string or a valid number. val="+JSON.stringify(r))};function fC(r){if(r=String(r),!(r.length>100)){var e=/^((?:\d+)?\.?\d+) *(milliseconds?|msecs?|ms|seconds?|secs?|s|minutes?|mins?|m|hours?|hrs?|h|days?|d|years?|yrs?|y)?$/i.exec(r);if(e){var i=parseFloat(e[1]),t=(e[2]||"ms").toLowerCase();switch(t){case"years":case"year":case"yrs":case"yr":case"y":return i*oC;case"days":case"day":case"d":return i*ge;case"hours":case"hour":case"hrs":case"hr":case"h":return i*Ae;case"minutes":case"minute":case"mins":case"min":case"m":return i*Ne;case"seconds":case"second":case"secs":case"sec":case"s":return i*_e;case"milliseconds":case"millisecond":case"msecs":case"msec":case"ms":return i;default:return}}}}function lC(r){return r>=ge?Math.round(r/ge)+"d":r>=Ae?Math.round(r/Ae)+"h":r>=Ne?Math.round(r/Ne)+"m":r>=_e?Math.round(r/_e)+"s":r+"ms"}function cC(r){return T1(r,ge,"day")||T1(r,Ae,"hour")||T1(r,Ne,"minute")||T1(r,_e,"second")||r+" ms"}function T1(r,e,i){if(!(r<e))return r<e*1.5?Math.floor(r/e)+" "+i:Math.ceil(r/e)+" "+i+"s"}});var cp=s((G,lp)=>{G=lp.exports=V2.debug=V2.default=V2;G.coerce=_C;G.disable=mC;G.enable=qC;G.enabled=IC;G.humanize=fp();G.names=[];G.skips=[];G.formatters={};var U2;function pC(r){var e=0,i;for(i in r)e=(e<<5)-e+r.charCodeAt(i),e|=0;return G.colors[Math.abs(e)%G.colors.length]}function V2(r){function e(){if(e.enabled){var i=e,t=+new Date,u=t-(U2||t);i.diff=u,i.prev=U2,i.curr=t,U2=t;for(var a=new Array(arguments.length),v=0;v<a.length;v++)a[v]=arguments[v];a[0]=G.coerce(a[0]),typeof a[0]!="string"&&a.unshift("%O");var n=0;a[0]=a[0].replace(/%([a-zA-Z%])/g,function(c,f){if(c==="%%")return c;n++;var l=G.formatters[f];if(typeof l=="function"){var q=a[n];c=l.call(i,q),a.splice(n,1),n--}return c}),G.formatArgs.call(i,a);var o=e.log||G.log||console.log.bind(console);o.apply(i,a)}}return e.namespace=r,e.enabled=G.enabled(r),e.useColors=G.useColors(),e.color=pC(r),typeof G.init=="function"&&G.init(e),e}function qC(r){G.save(r),G.names=[],G.skips=[];for(var e=(typeof r=="string"?r:"").split(/[\s,]+/),i=e.length,t=0;t<i;t++)e[t]&&(r=e[t].replace(/\*/g,".*?"),r[0]==="-"?G.skips.push(new RegExp("^"+r.substr(1)+"$")):G.names.push(new RegExp("^"+r+"$")))}function mC(){G.enable("")}function IC(r){var e,i;for(e=0,i=G.skips.length;e<i;e++)if(G.skips[e].test(r))return!1;for(e=0,i=G.names.length;e<i;e++)if(G.names[e].test(r))return!0;return!1}function _C(r){return r instanceof Error?r.stack||r.message:r}});var k2=s(($,qp)=>{$=qp.exports=cp();$.log=gC;$.formatArgs=AC;$.save=SC;$.load=pp;$.useColors=NC;$.storage=typeof chrome<"u"&&typeof chrome.storage<"u"?chrome.storage.local:EC();$.colors=["lightseagreen","forestgreen","goldenrod","dodgerblue","darkorchid","crimson"];function NC(){return typeof window<"u"&&window.process&&window.process.type==="renderer"?!0:typeof document<"u"&&document.documentElement&&document.documentElement.style&&document.documentElement.style.WebkitAppearance||typeof window<"u"&&window.console&&(window.console.firebug||window.console.exception&&window.console.table)||typeof navigator<"u"&&navigator.userAgent&&navigator.userAgent.toLowerCase().match(/firefox\/(\d+)/)&&parseInt(RegExp.$1,10)>=31||typeof navigator<"u"&&navigator.userAgent&&navigator.userAgent.toLowerCase().match(/applewebkit\/(\d+)/)}$.formatters.j=function(r){try{return JSON.stringify(r)}catch(e){return"[UnexpectedJSONParseError]: "+e.message}};function AC(r){var e=this.useColors;if(r[0]=(e?"%c":"")+this.namespace+(e?" %c":" ")+r[0]+(e?"%c ":" ")+"+"+$.humanize(this.diff),!!e){var i="color: "+this.color;r.splice(1,0,i,"color: inherit");var t=0,u=0;r[0].replace(/%[a-zA-Z%]/g,function(a){a!=="%%"&&(t++,a==="%c"&&(u=t))}),r.splice(u,0,i)}}function gC(){return typeof console=="object"&&console.log&&Function.prototype.apply.call(console.log,console,arguments)}function SC(r){try{r==null?$.storage.removeItem("debug"):$.storage.debug=r}catch{}}function pp(){var r;try{r=$.storage.debug}catch{}return!r&&typeof process<"u"&&"env"in process&&(r=process.env.DEBUG),r}$.enable(pp());function EC(){try{return window.localStorage}catch{}}});var Se=s((JZ,mp)=>{"use strict";var OC=34028234663852886e22;mp.exports=OC});var gp=s((jZ,Ap)=>{"use strict";var hC=k2(),Ip=o2(),TC=y(),FC=d(),_p=H(),yC=Se(),Np=hC("gammaincinv:higher_newton");function wC(r,e,i,t,u,a,v,n){var o,c,f,l,q,p,m,_,N,I,O,A,h,S;S=r,O=1,A=1,p=e*e,c=r;do{if(S=r,m=S*S,i===0){if(o=(1-e)*_p(S)+S+a,o>_p(yC))return Np("Warning: overflow problems in one or more steps of the computation. The initial approximation to the root is returned."),c;h=FC(o)}else h=-v*S;n?(_=Ip(S,e,!0,!1),f=-h*(_-t)):(N=Ip(S,e,!0,!0),f=h*(N-u)),h=f,t>1e-120||A>1?(l=.5*(S-e+1)/S,q=(2*m-4*S*e+4*S+2*p-3*e+1)/m,q/=6,r=S+h*(1+h*(l+h*q))):r=S+h,O=TC(S/r-1),A+=1,S=r,S<0&&(S=c,A=100)}while(O>2e-14&&A<35);return(O>2e-14||A>99)&&Np("Warning: the number of iterations in the Newton method reached the upper limit N=35. The last value obtained for the root is given as output."),I=S||0,I}Ap.exports=wC});var Ep=s((zZ,Sp)=>{"use strict";function LC(r){return r===0?0:0+r*(1+r*(1+r*(1.5+r*(2.6666666666666665+r*(5.208333333333333+r*10.8)))))}Sp.exports=LC});var hp=s((xZ,Op)=>{"use strict";function HC(r){return r===0?1:1+r*(1+r*(.3333333333333333+r*(.027777777777777776+r*(-.003703703703703704+r*(.0002314814814814815+r*5878894767783657e-20)))))}Op.exports=HC});var b2=s((r$,Fp)=>{"use strict";var PC=y(),dC=d(),Tp=H(),GC=N0(),RC=Ep(),MC=hp(),WC=1e-8,CC=.08333333333333333,DC=.008333333333333333,Gr=[1,0,0,0,0,0];function BC(r){var e,i,t,u,a,v,n,o,c;if(c=r*r*.5,r===0?a=0:r<-1?(o=dC(-1-c),a=RC(o)):r<1?(o=r,a=MC(o)):(o=11+c,v=Tp(o),a=o+v,o=1/o,e=v*v,i=e*v,t=i*v,u=t*v,Gr[1]=(2-v)*.5,Gr[2]=(-9*v+6+2*e)/6,Gr[3]=-(3*i+36*v-22*e-12)*CC,Gr[4]=(60+350*e-300*v-125*i+12*t)/60,Gr[5]=-(-120-274*t+900*v-1700*e+1125*i+20*u)*DC,a+=v*o*GC(Gr,o)),o=1,r>-3.5&&r<-.03||r>.03&&r<40){o=1,n=a;do a=n*(c+Tp(n))/(n-1),o=PC(n/a-1),n=a;while(o>WC)}return a}Fp.exports=BC});var wp=s((e$,yp)=>{"use strict";var XC=.9189385332046728;yp.exports=XC});var Hp=s((i$,Lp)=>{"use strict";var UC=[1.9963790515900766,-.0017971032528832887,13129285796384672e-21,-2340875228178749e-22,72291210671127e-22,-3280997607821e-22,19875070901e-21,-1509214183e-21,1375340084e-22,-145728923e-22,17532367e-22,-2351465e-22,346551e-22,-55471e-22,9548e-22,-1748e-22,332e-22,-58e-22];function VC(r,e){var i,t,u,a,v;t=0,u=0,i=e+e,v=r;do a=u,u=t,t=i*u-a+UC[v],v-=1;while(v>=0);return(t-a)/2}Lp.exports=VC});var dp=s((t$,Pp)=>{"use strict";function kC(r){return r===0?.025721014990011306:.025721014990011306+r*(.08247596616699963+r*(-.0025328157302663564+r*(.0006099292666946337+r*(-.00033543297638406+r*.000250505279903))))}Pp.exports=kC});var Rp=s((a$,Gp)=>{"use strict";function bC(r){return r===0?.08333333333333333:.08333333333333333+r*(-.002777777777777778+r*(.0007936507936507937+r*-.0005952380952380953))}Gp.exports=bC});var Wp=s((u$,Mp)=>{"use strict";var K2=Tr(),F1=H(),Q2=wp(),KC=ee(),QC=Se(),YC=Hp(),ZC=dp(),$C=Rp(),JC=.30865217988013566;function jC(r){var e;return r<KC?QC:r<1?K2(r+1)-(r+.5)*F1(r)+r-Q2:r<2?K2(r)-(r-.5)*F1(r)+r-Q2:r<3?K2(r-1)-(r-.5)*F1(r)+r-Q2+F1(r-1):r<12?(e=18/(r*r)-1,YC(17,e)/(12*r)):(e=1/(r*r),r<1e3?ZC(e)/(JC+e)/r:$C(e)/r)}Mp.exports=jC});var Bp=s((s$,Dp)=>{"use strict";var Cp=d(),zC=a0(),xC=H(),rD=Se(),eD=pr(),iD=Wp();function tD(r){return r>=3?Cp(iD(r)):r>0?zC(r)/(Cp(-r+(r-.5)*xC(r))*eD):rD}Dp.exports=tD});var Up=s((v$,Xp)=>{"use strict";function aD(r){var e,i,t;return r===0?-.3333333333438:(r<0?e=-r:e=r,e<=1?(i=-.3333333333438+r*(-.2070740359969+r*(-.05041806657154+r*(-.004923635739372+r*-4293658292782e-17))),t=1+r*(.7045554412463+r*(.2118190062224+r*(.03048648397436+r*.001605037988091)))):(r=1/r,i=-4293658292782e-17+r*(-.004923635739372+r*(-.05041806657154+r*(-.2070740359969+r*-.3333333333438))),t=.001605037988091+r*(.03048648397436+r*(.2118190062224+r*(.7045554412463+r*1)))),i/t)}Xp.exports=aD});var kp=s((n$,Vp)=>{"use strict";var uD=y(),sD=H(),vD=b2(),nD=Up();function oD(r){var e;return uD(r)<1?nD(r):(e=vD(r),sD(r/(e-1))/r)}Vp.exports=oD});var Kp=s((o$,bp)=>{"use strict";function fD(r){var e,i,t;return r===0?-.0172847633523:(r<0?e=-r:e=r,e<=1?(i=-.0172847633523+r*(-.0159372646475+r*(-.00464910887221+r*(-.00060683488776+r*-614830384279e-17))),t=1+r*(.764050615669+r*(.297143406325+r*(.0579490176079+r*.00574558524851)))):(r=1/r,i=-614830384279e-17+r*(-.00060683488776+r*(-.00464910887221+r*(-.0159372646475+r*-.0172847633523))),t=.00574558524851+r*(.0579490176079+r*(.297143406325+r*(.764050615669+r*1)))),i/t)}bp.exports=fD});var Yp=s((f$,Qp)=>{"use strict";function lD(r){var e,i,t;return r===0?-.0172839517431:(r<0?e=-r:e=r,e<=1?(i=-.0172839517431+r*(-.0146362417966+r*(-.00357406772616+r*(-.000391032032692+r*249634036069e-17))),t=1+r*(.690560400696+r*(.249962384741+r*(.0443843438769+r*.00424073217211)))):(r=1/r,i=249634036069e-17+r*(-.000391032032692+r*(-.00357406772616+r*(-.0146362417966+r*-.0172839517431))),t=.00424073217211+r*(.0443843438769+r*(.249962384741+r*(.690560400696+r*1)))),i/t)}Qp.exports=lD});var $p=s((l$,Zp)=>{"use strict";function cD(r){var e,i,t;return r===0?.99994466948:(r<0?e=-r:e=r,e<=1?(i=.99994466948+r*(104.649839762+r*(857.204033806+r*(731.901559577+r*45.5174411671))),t=1+r*(104.526456943+r*(823.313447808+r*(3119.93802124+r*3970.03311219)))):(r=1/r,i=45.5174411671+r*(731.901559577+r*(857.204033806+r*(104.649839762+r*.99994466948))),t=3970.03311219+r*(3119.93802124+r*(823.313447808+r*(104.526456943+r*1)))),i/t)}Zp.exports=cD});var jp=s((c$,Jp)=>{"use strict";var pD=H(),qD=Kp(),mD=Yp(),ID=$p();function _D(r){var e,i;return r<-5?(i=r*r,e=pD(-r),(12-i-6*(e*e))/(12*i*r)):r<-2?qD(r):r<2?mD(r):r<1e3?(i=1/r,ID(r)/(-12*r)):-1/(12*r)}Jp.exports=_D});var xp=s((p$,zp)=>{"use strict";function ND(r){var e,i,t;return r===0?.0495346498136:(r<0?e=-r:e=r,e<=1?(i=.0495346498136+r*(.0299521337141+r*(.00688296911516+r*(.000512634846317+r*-201411722031e-16))),t=1+r*(.759803615283+r*(.261547111595+r*(.0464854522477+r*.00403751193496)))):(r=1/r,i=-201411722031e-16+r*(.000512634846317+r*(.00688296911516+r*(.0299521337141+r*.0495346498136))),t=.00403751193496+r*(.0464854522477+r*(.261547111595+r*(.759803615283+r*1)))),i/t)}zp.exports=ND});var eq=s((q$,rq)=>{"use strict";function AD(r){var e,i,t;return r===0?.00452313583942:(r<0?e=-r:e=r,e<=1?(i=.00452313583942+r*(.00120744920113+r*(-789724156582e-16+r*(-504476066942e-16+r*-535770949796e-17))),t=1+r*(.912203410349+r*(.405368773071+r*(.0901638932349+r*.00948935714996)))):(r=1/r,i=-535770949796e-17+r*(-504476066942e-16+r*(-789724156582e-16+r*(.00120744920113+r*.00452313583942))),t=.00948935714996+r*(.0901638932349+r*(.405368773071+r*(.912203410349+r*1)))),i/t)}rq.exports=AD});var tq=s((m$,iq)=>{"use strict";function gD(r){var e,i,t;return r===0?.00439937562904:(r<0?e=-r:e=r,e<=1?(i=.00439937562904+r*(.000487225670639+r*(-.000128470657374+r*(529110969589e-17+r*15716677175e-17))),t=1+r*(.794435257415+r*(.333094721709+r*(.0703527806143+r*.00806110846078)))):(r=1/r,i=15716677175e-17+r*(529110969589e-17+r*(-.000128470657374+r*(.000487225670639+r*.00439937562904))),t=.00806110846078+r*(.0703527806143+r*(.333094721709+r*(.794435257415+r*1)))),i/t)}iq.exports=gD});var uq=s((I$,aq)=>{"use strict";function SD(r){var e,i,t;return r===0?-.0011481191232:(r<0?e=-r:e=r,e<=1?(i=-.0011481191232+r*(-.112850923276+r*(1.51623048511+r*(-.218472031183+r*.0730002451555))),t=1+r*(14.2482206905+r*(69.7360396285+r*(218.938950816+r*277.067027185)))):(r=1/r,i=.0730002451555+r*(-.218472031183+r*(1.51623048511+r*(-.112850923276+r*-.0011481191232))),t=277.067027185+r*(218.938950816+r*(69.7360396285+r*(14.2482206905+r*1)))),i/t)}aq.exports=SD});var vq=s((_$,sq)=>{"use strict";function ED(r){var e,i,t;return r===0?-.000145727889667:(r<0?e=-r:e=r,e<=1?(i=-.000145727889667+r*(-.290806748131+r*(-13.308504545+r*(199.722374056+r*-11.4311378756))),t=1+r*(139.612587808+r*(2189.01116348+r*(7115.24019009+r*45574.6081453)))):(r=1/r,i=-11.4311378756+r*(199.722374056+r*(-13.308504545+r*(-.290806748131+r*-.000145727889667))),t=45574.6081453+r*(7115.24019009+r*(2189.01116348+r*(139.612587808+r*1)))),i/t)}sq.exports=ED});var fq=s((N$,oq)=>{"use strict";var nq=H(),OD=xp(),hD=eq(),TD=tq(),FD=uq(),yD=vq();function wD(r){var e,i;return r<-8?(e=r*r,i=nq(-r)/r,(-30+r*i*(6*e*i*i-12+e))/(12*r*e*e)):r<-4?OD(r)/(r*r):r<-2?hD(r):r<2?TD(r):r<10?(e=1/r,FD(e)/(r*r)):r<100?(e=1/r,yD(e)/(r*r)):-nq(r)/(12*r*r*r)}oq.exports=wD});var Aq=s((A$,Nq)=>{"use strict";var LD=k2(),lq=N0(),q0=Tr(),HD=Ir(),cq=a0(),y1=W(),pq=y(),Rr=d(),PD=P0(),dD=D(),n0=H(),GD=pr(),RD=Se(),MD=je(),WD=gp(),qq=b2(),mq=Bp(),CD=kp(),DD=jp(),BD=fq(),XD=LD("gammaincinv:compute"),ar=.5,Y2=.3333333333333333,UD=.25,Iq=.2,_q=.16666666666666666,VD=.08333333333333333,kD=.041666666666666664,o0=[0,0,0,0,0];function bD(r,e,i){var t,u,a,v,n,o,c,f,l,q,p,m,_,N,I,O,A,h,S,T,g,F,R,k,e0,b,z,J,E,L,Ar,R1,M1,W1,s3,Y,B,C1,Z,y0,f0,D1,B1,X1;if(e<ar?(v=!0,n=e,D1=-1):(v=!1,n=i,D1=1),Z=0,pq(r-1)<1e-4&&(y0=0,v?e<.001?(R1=e*e,J=R1*e,Ar=J*e,T=Ar*e,S=T*e,g=e+R1*ar+J*Y2+Ar*UD+T*Iq+S*_q):g=-n0(1-e):g=-n0(i),r===1?(Z=2,W1=g):(a=q0(r),Z=1)),i<1e-30&&r<ar&&(y0=0,g=-n0(i*cq(r))+(r-1)*n0(-n0(i*cq(r))),Z=1,a=q0(r)),r>1&&r<500&&e<1e-80){for(y0=0,o=1/r,t=1/(r+1),g=(q0(r+1)+n0(e))*o,g=Rr(g),N=g,C1=0;C1<10;C1++)g=N*Rr(g*o)*dD(1-g*t,o);Z=1,a=q0(r)}if(c=1/r*(n0(e)+q0(r+1)),c<n0(Iq*(1+r))&&Z===0&&(f0=Rr(c),y0=0,F=r*r,M1=F*r,E=M1*r,I=r+1,p=I*I,q=I*p,l=p*p,O=r+2,f=O*O,A=r+3,o0[0]=1,o0[1]=1/I,o0[2]=ar*(3*r+5)/(p*O),o0[3]=Y2*(31+8*F+33*r)/(q*O*A),o0[4]=kD*(2888+1179*M1+125*E+3971*F+5661*r)/(l*f*A*(r+4)),g=f0*lq(o0,f0),a=q0(r),Z=1),r<10&&Z===0&&(m=y1(r)/(mq(r)*GD),_=PD(.02,m),i<_&&(y0=0,Y=1-r,b=Y*Y,z=b*Y,h=y1(-2/r*n0(i/m)),g=r*qq(h),B=n0(g),g>5?(R=B*B,k=R*B,e0=k*B,f0=1/g,o0[0]=B-1,o0[1]=(3*Y-2*Y*B+R-2*B+2)*ar,o0[2]=(24*Y*B-11*b-24*Y-6*R+12*B-12-9*Y*R+6*b*B+2*k)*_q,o0[3]=(-12*z*B+8.04*Y*R-114*b*B+(72+36*R)+(3*e0-72*B+162)*(Y-168*Y*B)-(12*k+25*z)-(22*Y*k+36*b*R+120*b))*VD,o0[4]=0,g=g-B+Y*f0*lq(o0,f0)):(f0=1/g,R=B*B,s3=B-1,B1=B-Y*f0*s3,B1<g&&(g-=B1)),a=q0(r),Z=1)),pq(n-ar)<1e-5&&Z===0&&(y0=0,o=1/r,g=r-Y2+(.019753086419753086+.007211444248481286*o)*o,a=q0(r),Z=1),r<1&&Z===0&&(y0=0,v?g=Rr(1/r*(n0(n)+q0(r+1))):g=Rr(1/r*(n0(1-n)+q0(r+1))),a=q0(r),Z=1),Z===0)if(y0=1,o=1/r,f0=HD(2*n),h=D1*f0/y1(r*ar),f0<RD)h+=(CD(h)+(DD(h)+BD(h)*o)*o)*o,g=r*qq(h),X1=h,L=-y1(r/MD)*Rr(-ar*r*X1*X1)/mq(r),u=1/L;else return XD("Warning: Overflow problems in one or more steps of the computation."),NaN;return Z<2&&(W1=WD(g,r,y0,e,i,a,u,v)),W1}Nq.exports=bD});var hq=s((g$,Oq)=>{"use strict";var gq=P(),KD=ee(),Sq=M(),Eq=Aq();function QD(r,e,i){return gq(r)||gq(e)?NaN:e<KD?NaN:r>1||r<0?NaN:i===!0?r===0?Sq:r===1?0:Eq(e,1-r,r):r===0?0:r===1?Sq:Eq(e,r,1-r)}Oq.exports=QD});var Z2=s((S$,Tq)=>{"use strict";var YD=hq();Tq.exports=YD});var Lq=s((E$,wq)=>{"use strict";var ZD=P(),Fq=Fe(),$D=W(),yq=fi(),JD=6123233995736766e-32;function jD(r){var e;return ZD(r)?NaN:r<-1||r>1?NaN:r>.5?2*Fq($D(.5-.5*r)):(e=yq-Fq(r),e+=JD,e+=yq,e)}wq.exports=jD});var Pq=s((O$,Hq)=>{"use strict";var zD=Lq();Hq.exports=zD});var w1=s((h$,dq)=>{"use strict";var xD=1.4142135623730951;dq.exports=xD});var Rq=s((T$,Gq)=>{"use strict";function rB(r){return r===0?.16666666666666666:.16666666666666666+r*.16666666666666666}Gq.exports=rB});var Wq=s((F$,Mq)=>{"use strict";function eB(r){return r===0?.058333333333333334:.058333333333333334+r*(.06666666666666667+r*.008333333333333333)}Mq.exports=eB});var Dq=s((y$,Cq)=>{"use strict";function iB(r){return r===0?.0251984126984127:.0251984126984127+r*(.026785714285714284+r*(.0017857142857142857+r*.0001984126984126984))}Cq.exports=iB});var Xq=s((w$,Bq)=>{"use strict";function tB(r){return r===0?.012039792768959435:.012039792768959435+r*(.010559964726631394+r*(-.0011078042328042327+r*(.0003747795414462081+r*27557319223985893e-22)))}Bq.exports=tB});var Vq=s((L$,Uq)=>{"use strict";function aB(r){return r===0?.003837005972422639:.003837005972422639+r*(.00610392115600449+r*(-.0016095979637646305+r*(.0005945867404200738+r*(-6270542728876062e-20+r*2505210838544172e-23))))}Uq.exports=aB});var bq=s((H$,kq)=>{"use strict";function uB(r){return r===0?.0032177478835464946:.0032177478835464946+r*(.0010898206731540065+r*(-.0012579159844784845+r*(.0006908420797309686+r*(-.00016376804137220805+r*(154012654012654e-19+r*16059043836821613e-26)))))}kq.exports=uB});var Qq=s((P$,Kq)=>{"use strict";function sB(r){return r===0?.001743826229834001:.001743826229834001+r*(3353097688001788e-20+r*(-.0007624513544032393+r*(.0006451304695145635+r*(-.000249472580470431+r*(49255746366361444e-21+r*(-39851014346715405e-22+r*7647163731819816e-28))))))}Kq.exports=sB});var Zq=s((d$,Yq)=>{"use strict";function vB(r){return r===0?.0009647274732138864:.0009647274732138864+r*(-.0003110108632631878+r*(-.00036307660358786886+r*(.0005140660578834113+r*(-.00029133414466938067+r*(9086710793521991e-20+r*(-15303004486655377e-21+r*(10914179173496788e-22+r*28114572543455206e-31)))))))}Yq.exports=vB});var Jq=s((G$,$q)=>{"use strict";function nB(r){return r===0?.0005422926281312969:.0005422926281312969+r*(-.0003694266780000966+r*(-.00010230378073700413+r*(.00035764655430568635+r*(-.00028690924218514614+r*(.00012645437628698076+r*(-33202652391372056e-21+r*(4890304529197534e-21+r*(-3123956959982987e-22+r*822063524662433e-32))))))))}$q.exports=nB});var zq=s((R$,jq)=>{"use strict";var oB=Ve(),fB=N0(),lB=W(),cB=r0(),pB=Rq(),qB=Wq(),mB=Dq(),IB=Xq(),_B=Vq(),NB=bq(),AB=Qq(),gB=Zq(),SB=Jq(),EB=0,T0=[1,0,0,0,0,0,0,0,0,0];function OB(r,e){var i,t;return t=oB(r/2,.5)*lB(r*cB)*(e-.5),i=1/r,T0[1]=pB(i),T0[2]=qB(i),T0[3]=mB(i),T0[4]=IB(i),T0[5]=_B(i),T0[6]=NB(i),T0[7]=AB(i),T0[8]=gB(i),T0[9]=SB(i),EB+t*fB(T0,t*t)}jq.exports=OB});var em=s((M$,rm)=>{"use strict";var hB=Ve(),TB=N0(),xq=W(),FB=D(),yB=r0(),ur=[0,0,0,0,0,0,0];function wB(r,e){var i,t,u,a,v,n,o,c;return c=hB(r/2,.5)*xq(r*yB)*e,a=r+2,v=r+4,n=r+6,ur[0]=1,ur[1]=-(r+1)/(2*a),a*=r+2,ur[2]=-r*(r+1)*(r+3)/(8*a*v),a*=r+2,ur[3]=-r*(r+1)*(r+5)*((3*r+7)*r-2)/(48*a*v*n),a*=r+2,v*=r+4,ur[4]=-r*(r+1)*(r+7)*(((((15*r+154)*r+465)*r+286)*r-336)*r+64)/(384*a*v*n*(r+8)),a*=r+2,ur[5]=-r*(r+1)*(r+3)*(r+9)*((((((35*r+452)*r+1573)*r+600)*r-2020)*r+928)*r-128)/(1280*a*v*n*(r+8)*(r+10)),a*=r+2,v*=r+4,n*=r+6,ur[6]=-r*(r+1)*(r+11)*(((((((((((945*r+31506)*r+425858)*r+2980236)*r+11266745)*r+20675018)*r+7747124)*r-22574632)*r-8565600)*r+18108416)*r-7099392)*r+884736)/(46080*a*v*n*(r+8)*(r+10)*(r+12)),o=xq(r),u=FB(o*c,1/r),t=u*u,i=TB(ur,t),i*=o,i/=u,-i}rm.exports=wB});var sm=s((W$,um)=>{"use strict";var im=Ir(),LB=U0(),tm=W(),HB=D(),PB=Ge(),am=w1();function dB(r,e){var i,t,u,a,v,n,o;return r>1e20?-im(2*e)*am:(i=1/(r-.5),t=48/(i*i),u=((20700*i/t-98)*i-16)*i+96.36,a=((94.5/(t+u)-3)/t+1)*tm(i*PB)*r,o=HB(a*2*e,2/r),o>.05+i?(n=-im(2*e)*am,o=n*n,r<5&&(u+=.3*(r-4.5)*(n+.6)),u+=(((.05*a*n-5)*n-7)*n-2)*n+t,o=(((((.4*o+6.3)*o+36)*o+94.5)/u-o-3)/t+1)*n,o=LB(i*o*o)):o=((1/(((r+6)/(r*o)-.089*a-.822)*(r+2)*3)+.5/(r+4))*o-1)*(r+1)/(r+2)+1/o,v=tm(r*o),-v)}um.exports=dB});var Im=s((C$,mm)=>{"use strict";var vm=Ir(),nm=j(),$2=w0(),om=Di(),GB=Pq(),L1=W(),RB=y(),fm=Ke(),MB=D(),WB=Or(),lm=w1(),cm=r0(),pm=zq(),H1=em(),J2=sm(),qm=268435456,CB=1/3,DB=2*53/3,BB=.8549879733383485;function XB(r,e,i){var t,u,a,v,n,o,c,f,l,q,p,m,_,N,I,O;if(n=0,e>i?(c=i,i=e,e=c,v=!0):v=!1,nm(r)===r&&r<20)switch(u=$2(1,DB),nm(r)){case 1:e===.5?n=0:n=-fm(cm*e)/WB(cm*e);break;case 2:n=(2*e-1)/L1(2*e*i);break;case 4:o=4*e*i,a=L1(o),_=4*fm(GB(a)/3)/a,N=L1(_-4),n=e-.5<0?-N:N;break;case 6:if(e<1e-150)return(v?-1:1)*J2(r,e);I=4*(e-e*e),O=MB(I,CB),m=6*(1+BB*(1/O-1));do l=m*m,q=l*l,p=m*q,f=m,m=2*(8*I*p-270*l+2187)/(5*(4*I*q-216*m-243));while(RB((m-f)/m)>u);m=L1(m-r),n=e-.5<0?-m:m;break;default:r>qm?n=vm(2*e)*lm:r<3?(t=.2742-r*.0242143,e>t?n=pm(r,e):n=H1(r,e)):(t=$2(1,om(r/-.654)),e>t?n=J2(r,e):n=H1(r,e))}else r>qm?n=-vm(2*e)*lm:r<3?(t=.2742-r*.0242143,e>t?n=pm(r,e):n=H1(r,e)):(t=$2(1,om(r/-.654)),e>t?n=J2(r,e):n=H1(r,e));return v?-n:n}mm.exports=XB});var Nm=s((D$,_m)=>{"use strict";var UB=Im();function VB(r,e,i){var t,u,a,v;return u=e/2,a=1-u,t=r*2,v=UB(t,u,a),i&&(i.value=v*v/(t+v*v)),t/(t+v*v)}_m.exports=VB});var Sm=s((B$,gm)=>{"use strict";var P1=N0(),kB=Ir(),Am=W(),bB=d(),B0=w1(),C=[0,0,0,0,0,0,0],Ee=[0,0,0,0];function KB(r,e,i){var t,u,a,v,n,o,c;return t=kB(2*i),t/=-Am(r/2),Ee[0]=t,o=e-r,v=o*o,n=v*o,C[0]=-o*B0/2,C[1]=(1-2*o)/8,C[2]=-(o*B0/48),C[3]=-1/192,C[4]=-o*B0/3840,C[5]=0,C[6]=0,Ee[1]=P1(C,t),C[0]=o*B0*(3*o-2)/12,C[1]=(20*v-12*o+1)/128,C[2]=o*B0*(20*o-1)/960,C[3]=(16*v+30*o-15)/4608,C[4]=o*B0*(21*o+32)/53760,C[5]=(-(32*v)+63)/368640,C[6]=-o*B0*(120*o+17)/25804480,Ee[2]=P1(C,t),C[0]=o*B0*(-75*v+80*o-16)/480,C[1]=(-1080*n+868*v-90*o-45)/9216,C[2]=o*B0*(-1190*v+84*o+373)/53760,C[3]=(-2240*n-2508*v+2100*o-165)/368640,C[4]=0,C[5]=0,C[6]=0,Ee[3]=P1(C,t),a=P1(Ee,1/r),u=a*a,c=-bB(-u/2),u===0?.5:(1+a*Am((1+c)/u))/2}gm.exports=KB});var j2=s((X$,Om)=>{"use strict";var Em=H(),QB=d0(),d1=QB/4;function YB(r,e){return i;function i(t){var u,a,v;return v=1-t,v===0?[-d1,-d1]:t===0?[-d1,-d1]:(a=Em(t)+e*Em(v)+r,u=1/t-e/v,[a,u])}}Om.exports=YB});var Tm=s((U$,hm)=>{"use strict";var ZB=P();function $B(r){return r===0||ZB(r)?r:r<0?-1:1}hm.exports=$B});var z2=s((V$,Fm)=>{"use strict";var JB=Tm();Fm.exports=JB});var r3=s((k$,wm)=>{"use strict";var ym=z2(),G1=y(),jB=w0(),x2=d0();function zB(r,e,i,t,u,a){var v,n,o,c,f,l,q,p,m,_;m=0,v=0,f=e,c=jB(1,1-u),q=x2,n=x2,o=x2,l=a;do{if(v=m,o=n,n=q,p=r(f),m=p[0],_=p[1],l-=1,m===0)break;if(_===0?(v===0&&(f===i?e=t:e=i,v=r(e),q=e-f),ym(v)*ym(m)<0?q<0?q=(f-i)/2:q=(f-t)/2:q<0?q=(f-t)/2:q=(f-i)/2):q=m/_,G1(q*2)>G1(o)&&(q=q>0?(f-i)/2:(f-t)/2),e=f,f-=q,f<=i){if(q=.5*(e-i),f=e-q,f===i||f===t)break}else if(f>=t&&(q=.5*(e-t),f=e-q,f===i||f===t))break;q>0?t=e:i=e}while(l&&G1(f*c)<G1(q));return f}wm.exports=zB});var Hm=s((b$,Lm)=>{"use strict";function xB(r){return r===0?-1:-1+r*(-5+r*5)}Lm.exports=xB});var dm=s((K$,Pm)=>{"use strict";function rX(r){return r===0?1:1+r*(21+r*(-69+r*46))}Pm.exports=rX});var Rm=s((Q$,Gm)=>{"use strict";function eX(r){return r===0?7:7+r*(-2+r*(33+r*(-62+r*31)))}Gm.exports=eX});var Wm=s((Y$,Mm)=>{"use strict";function iX(r){return r===0?25:25+r*(-52+r*(-17+r*(88+r*(-115+r*46))))}Mm.exports=iX});var Dm=s((Z$,Cm)=>{"use strict";function tX(r){return r===0?7:7+r*(12+r*(-78+r*52))}Cm.exports=tX});var Xm=s(($$,Bm)=>{"use strict";function aX(r){return r===0?-7:-7+r*(2+r*(183+r*(-370+r*185)))}Bm.exports=aX});var Vm=s((J$,Um)=>{"use strict";function uX(r){return r===0?-533:-533+r*(776+r*(-1835+r*(10240+r*(-13525+r*5410))))}Um.exports=uX});var bm=s((j$,km)=>{"use strict";function sX(r){return r===0?-1579:-1579+r*(3747+r*(-3372+r*(-15821+r*(45588+r*(-45213+r*15071)))))}km.exports=sX});var Qm=s((z$,Km)=>{"use strict";function vX(r){return r===0?449:449+r*(-1259+r*(-769+r*(6686+r*(-9260+r*3704))))}Km.exports=vX});var Zm=s((x$,Ym)=>{"use strict";function nX(r){return r===0?63149:63149+r*(-151557+r*(140052+r*(-727469+r*(2239932+r*(-2251437+r*750479)))))}Ym.exports=nX});var Jm=s((rJ,$m)=>{"use strict";function oX(r){return r===0?29233:29233+r*(-78755+r*(105222+r*(146879+r*(-1602610+r*(3195183+r*(-2554139+r*729754))))))}$m.exports=oX});var zm=s((eJ,jm)=>{"use strict";function fX(r){return r===0?1:1+r*(-13+r*13)}jm.exports=fX});var rI=s((iJ,xm)=>{"use strict";function lX(r){return r===0?1:1+r*(21+r*(-69+r*46))}xm.exports=lX});var tI=s((tJ,iI)=>{"use strict";var Mr=N0(),cX=Ir(),pX=y(),qX=d(),eI=H(),mX=W(),IX=Or(),_X=Ke(),NX=j2(),AX=r3(),gX=Hm(),SX=dm(),EX=Rm(),OX=Wm(),hX=Dm(),TX=Xm(),FX=Vm(),yX=bm(),wX=Qm(),LX=Zm(),HX=Jm(),PX=zm(),dX=rI(),w=[0,0,0,0,0,0],Oe=[0,0,0,0];function GX(r,e,i){var t,u,a,v,n,o,c,f,l,q,p,m,_,N,I,O,A,h,S,T;return n=cX(2*r)/-mX(e/2),h=IX(i),A=_X(i),Oe[0]=n,I=h*h,O=A*A,_=h*A,m=_*_,p=m*_,q=m*m,l=m*p,f=p*p,c=q*p,w[0]=(2*I-1)/(3*_),w[1]=-gX(I)/(36*m),w[2]=SX(I)/(1620*p),w[3]=EX(I)/(6480*q),w[4]=OX(I)/(90720*l),w[5]=0,Oe[1]=Mr(w,n),w[0]=-hX(I)/(405*p),w[1]=TX(I)/(2592*q),w[2]=-FX(I)/(204120*l),w[3]=-yX(I)/(2099520*f),w[4]=0,w[5]=0,Oe[2]=Mr(w,n),w[0]=wX(I)/(102060*l),w[1]=-LX(I)/(20995200*f),w[2]=HX(I)/(36741600*c),w[3]=0,w[4]=0,w[5]=0,Oe[3]=Mr(w,n),o=Mr(Oe,1/e),a=A/h,a*=a,N=-(o*o)/(2*I)+eI(I)+O*eI(O)/I,pX(o)<.7?(w[0]=I,w[1]=_,w[2]=(1-2*I)/3,w[3]=PX(I)/(36*_),w[4]=dX(I)/(270*m),w[5]=0,T=Mr(w,o)):(S=qX(N),w[0]=S,w[1]=a,w[2]=0,w[3]=3*a*(3*a+1)/6,w[4]=4*a*(4*a+1)*(4*a+2)/24,w[5]=5*a*(5*a+1)*(5*a+2)*(5*a+3)/120,T=Mr(w,S),(T-I)*o<0&&(T=1-T)),o<0?(u=0,t=I):(u=I,t=1),(T<u||T>t)&&(T=(u+t)/2),v=NX(-N,a),T=AX(v,T,u,t,32,100),T}iI.exports=GX});var uI=s((aJ,aI)=>{"use strict";var RX=5e-324;aI.exports=RX});var oI=s((uJ,nI)=>{"use strict";var sI=Z2(),vI=H(),MX=W(),WX=uI(),CX=j2(),DX=r3();function BX(r,e,i,t){var u,a,v,n,o,c,f,l,q,p,m,_,N,I,O,A,h,S,T,g,F,R,k,e0,b,z,J,E,L,Ar;return i<t?o=sI(i,e,!0):o=sI(t,e,!1),o/=r,I=e/r,E=MX(1+I),S=E*E,T=S*E,g=S*S,F=T*S,R=T*T,k=g*T,e0=g*g,b=F*g,f=F*F,J=o-I,O=J*J,A=O*J,h=O*O,z=E+1,l=z*z,q=z*l,p=l*l,m=(E+2)*(E-1)/(3*E),m+=(T+9*S+21*E+5)*J/(36*S*z),m-=(g-13*T+69*S+167*E+46)*O/(1620*l*T),m-=(7*F+21*g+70*T+26*S-93*E-31)*A/(6480*q*g),m-=(75*R+202*F+188*g-888*T-1345*S+118*E+138)*h/(272160*p*F),_=(28*g+131*T+402*S+581*E+208)*(E-1)/(1620*z*T),_-=(35*R-154*F-623*g-1636*T-3983*S-3514*E-925)*J/(12960*l*g),_-=(2132*k+7915*R+16821*F+35066*g+87490*T+141183*S+95993*E+21640)*O/(816480*F*q),_-=(11053*e0+53308*k+117010*R+163924*F+116188*g-258428*T-677042*S-481940*E-105497)*A/(14696640*p*R),N=-((3592*k+8375*R-1323*F-29198*g-89578*T-154413*S-116063*E-29632)*(E-1))/(816480*F*l),N-=(442043*b+2054169*e0+3803094*k+3470754*R+2141568*F-2393568*g-19904934*T-34714674*S-23128299*E-5253353)*J/(146966400*R*q),N-=(116932*f+819281*b+2378172*e0+4341330*k+6806004*R+10622748*F+18739500*g+30651894*T+30869976*S+15431867*E+2919016)*O/(146966400*p*k),c=o+m/r+_/(r*r)+N/(r*r*r),c<=0&&(c=WX),L=c-I*vI(c)+(1+I)*vI(1+I)-I,u=1/(1+I),v=c<I?u:0,n=c<I?1:u,Ar=(v+n)/2,a=CX(L,I),DX(a,Ar,v,n,32,100)}nI.exports=BX});var lI=s((sJ,fI)=>{"use strict";var U=y(),XX=w0(),e3=z2(),UX=Q0(),i3=d0();function VX(r,e,i,t,u,a){var v,n,o,c,f,l,q,p,m,_,N,I,O,A,h,S;A=0,n=!1,l=e,f=XX(1,1-u),m=UX(1e7*e,1e7),q=0,o=m,c=m,p=a;do{if(q=A,c=o,o=m,O=r(l),A=O[0],h=O[1],S=O[2],p-=1,A===0)break;if(h===0?(q===0&&(l===i?e=t:e=i,q=r(e),m=e-l),e3(q)*e3(A)<0?m<0?m=(l-i)/2:m=(l-t)/2:m<0?m=(l-t)/2:m=(l-i)/2):S===0?m=A/h:(_=2*A,I=2*h-A*(S/h),U(I)<1&&U(_)>=U(I)*i3?m=A/h:m=_/I,m*h/A<0&&(m=A/h,U(m)>2*U(e)&&(m=(m<0?-1:1)*2*U(e)))),v=U(m/c),v>.8&&v<2&&(m=m>0?(l-i)/2:(l-t)/2,U(m)>l&&(m=e3(m)*l),c=m*3),e=l,l-=m,l<i){if(U(i)<1&&U(l)>1&&i3/U(l)<U(i)?N=1e3:N=l/i,U(N)<1&&(N=1/N),!n&&N>0&&N<3)m=.99*(e-i),l=e-m,n=!0;else if(m=(e-i)/2,l=e-m,l===i||l===t)break}else if(l>t){if(U(t)<1&&U(l)>1&&i3/U(l)<U(t)?N=1e3:N=l/t,U(N)<1&&(N=1/N),!n&&N>0&&N<3)m=.99*(e-t),l=e-m,n=!0;else if(m=(e-t)/2,l=e-m,l===i||l===t)break}m>0?t=e:i=e}while(p&&U(l*f)<U(m));return l}fI.exports=VX});var pI=s((vJ,cI)=>{"use strict";var kX=E2().assign,bX=y(),KX=d0(),t3=V0();function QX(r,e,i,t){return u;function u(a){var v,n,o,c,f;return f=1-a,v=[0,0],kX(a,r,e,!0,t,v,1,0),c=v[0]-i,n=v[1],t&&(n=-n),f===0&&(f=t3*64),a===0&&(a=t3*64),o=n*(-(f*r)+(e-2)*a+1),bX(o)<f*a*KX&&(o/=f*a),t&&(o=-o),n===0&&(n=(t?-1:1)*t3*64),[c,n,o]}}cI.exports=QX});var OI=s((nJ,EI)=>{"use strict";var YX=N0(),qI=O2(),a3=U0(),mI=i0(),ZX=Fe(),Wr=Li(),II=W(),$X=y(),_I=d(),F0=D(),NI=Or(),JX=Q0(),jX=P0(),AI=H(),u3=V0(),gI=Ge(),SI=t0(),zX=Nm(),xX=Sm(),rU=tI(),eU=oI(),iU=lI(),tU=pI(),aU=32,uU=1e3,Nr=[0,0,0,0,0];function sU(r,e,i,t){var u,a,v,n,o,c,f,l,q,p,m,_,N,I,O,A,h,S,T,g,F,R,k,e0,b,z,J,E,L;if(a=!1,t===0)return[1,0];if(i===0)return[0,1];if(r===1){if(e===1)return[i,1-i];_=e,e=r,r=_,_=t,t=i,i=_,a=!0}if(E=0,n=0,c=1,r===.5){if(e===.5)return E=NI(i*gI),E*=E,L=NI(t*gI),L*=L,[E,L];e>.5&&(_=e,e=r,r=_,_=t,t=i,i=_,a=!a)}if(e===.5&&r>=.5&&i!==1)F={},E=zX(r,i,F),L=F.value;else{if(e===1)return i<t?r>1?(E=F0(i,1/r),L=-a3(AI(i)/r)):(E=F0(i,1/r),L=1-E):(E=_I(mI(-t)/r),L=-a3(mI(-t)/r)),a&&(_=L,L=E,E=_),[E,L];if(r+e>5)i>.5&&(_=e,e=r,r=_,_=t,t=i,i=_,a=!a),q=jX(r,e),l=JX(r,e),II(q)>l-q&&q>5?(E=xX(r,e,i),L=1-E):(b=r+e,o=ZX(II(r/b)),v=q/b,v>=.2&&v<=.8&&b>=10?(m=F0(i,1/r),m<.0025&&r+e<200?E=m*F0(r*Wr(r,e),1/r):E=rU(i,b,o),L=1-E):(r<e&&(_=e,e=r,r=_,_=t,t=i,i=_,a=!a),p=0,e<2&&(p=Wr(r,e)),p===0?L=1:(L=F0(e*t*p,1/e),E=1-L)),L>1e-5&&(E=eU(r,e,i,t),L=1-E));else if(r<1&&e<1){if(g=(1-r)/(2-r-e),A=qI(g,r,e)-i,$X(A)/i<SI*3)return a?[1-g,g]:[g,1-g];A<0&&(_=e,e=r,r=_,_=t,t=i,i=_,a=!a,g=1-g),T=F0(r*i*Wr(r,e),1/r),E=T/(1+T),L=1/(1+T),E>g&&(E=g),c=g}else r>1&&e>1?(g=(r-1)/(r+e-2),N=(e-1)/(r+e-2),S=qI(g,r,e)-i,S<0&&(_=e,e=r,r=_,_=t,t=i,i=_,_=N,N=g,g=_,a=!a),h=AI(i*r*Wr(r,e))/r,E=_I(h),L=E<.9?1-E:-a3(h),e<r&&E<.2&&(I=r-1,O=e-1,R=r*r,k=r*R,e0=e*e,Nr[0]=0,Nr[1]=1,Nr[2]=O/I,I*=I,Nr[3]=O*(3*r*e+5*e+R-r-4)/(2*(r+2)*I),I*=r+1,Nr[4]=O*(33*r*e0+31*e0+8*R*e0-30*r*e-47*e+11*R*e+6*k*e+18+4*r-k+R*R-10*R),Nr[4]/=3*(r+3)*(r+2)*I,E=YX(Nr,E)),E>g&&(E=g),c=g):(e<r&&(_=e,e=r,r=_,_=t,t=i,i=_,a=!a),F0(i,1/r)<.5?(E=F0(i*r*Wr(r,e),1/r),E===0&&(E=u3),L=1-E):(L=F0(1-F0(i,e*Wr(r,e)),1/e),L===0&&(L=u3),E=1-L))}return E>.5&&(_=e,e=r,r=_,_=t,t=i,i=_,_=L,L=E,E=_,a=!a,z=1-c,J=1-n,n=z,c=J),n===0&&(a?(n=SI,E<n&&(E=n)):n=u3,E<n&&(E=n)),u=aU,E<1e-50&&(r<1||e<1)&&(u*=3,u/=2),f=tU(r,e,i<t?i:t,i>=t),E=iU(f,E,n,c,u,uU),E===n&&(E=0),a?[1-E,E]:[E,1-E]}EI.exports=sU});var TI=s((oJ,hI)=>{"use strict";var vU=OI();hI.exports=vU});var nU=sr(O2()),oU=sr(Fr()),fU=sr(Ir()),lU=sr(np()),cU=sr(Z2()),pU=sr(N1()),qU=sr(TI());var export_betainc=nU.default;var export_erfc=oU.default;var export_erfcinv=fU.default;var export_gammainc=lU.default;var export_gammaincinv=cU.default;var export_gammaln=pU.default;var export_kernelBetaincinv=qU.default;export{export_betainc as betainc,export_erfc as erfc,export_erfcinv as erfcinv,export_gammainc as gammainc,export_gammaincinv as gammaincinv,export_gammaln as gammaln,export_kernelBetaincinv as kernelBetaincinv};
/**
* @license Apache-2.0
*
* Copyright (c) 2021 The Stdlib Authors.
*
* Licensed under the Apache License, Version 2.0 (the "License");
* you may not use this file except in compliance with the License.
* You may obtain a copy of the License at
*
*    http://www.apache.org/licenses/LICENSE-2.0
*
* Unless required by applicable law or agreed to in writing, software
* distributed under the License is distributed on an "AS IS" BASIS,
* WITHOUT WARRANTIES OR CONDITIONS OF ANY KIND, either express or implied.
* See the License for the specific language governing permissions and
* limitations under the License.
*/
/**
* @license Apache-2.0
*
* Copyright (c) 2018 The Stdlib Authors.
*
* Licensed under the Apache License, Version 2.0 (the "License");
* you may not use this file except in compliance with the License.
* You may obtain a copy of the License at
*
*    http://www.apache.org/licenses/LICENSE-2.0
*
* Unless required by applicable law or agreed to in writing, software
* distributed under the License is distributed on an "AS IS" BASIS,
* WITHOUT WARRANTIES OR CONDITIONS OF ANY KIND, either express or implied.
* See the License for the specific language governing permissions and
* limitations under the License.
*/
/**
* @license Apache-2.0
*
* Copyright (c) 2022 The Stdlib Authors.
*
* Licensed under the Apache License, Version 2.0 (the "License");
* you may not use this file except in compliance with the License.
* You may obtain a copy of the License at
*
*    http://www.apache.org/licenses/LICENSE-2.0
*
* Unless required by applicable law or agreed to in writing, software
* distributed under the License is distributed on an "AS IS" BASIS,
* WITHOUT WARRANTIES OR CONDITIONS OF ANY KIND, either express or implied.
* See the License for the specific language governing permissions and
* limitations under the License.
*/
/**
* @license Apache-2.0
*
* Copyright (c) 2018 The Stdlib Authors.
*
* Licensed under the Apache License, Version 2.0 (the "License");
* you may not use this file except in compliance with the License.
* You may obtain a copy of the License at
*
*    http://www.apache.org/licenses/LICENSE-2.0
*
* Unless required by applicable law or agreed to in writing, software
* distributed under the License is distributed on an "AS IS" BASIS,
* WITHOUT WARRANTIES OR CONDITIONS OF ANY KIND, either express or implied.
* See the License for the specific language governing permissions and
* limitations under the License.
*
*
* ## Notice
*
* The following copyright, license, and long comment were part of the original implementation available as part of [FDLIBM]{@link http://www.netlib.org/fdlibm/s_expm1.c} and [FreeBSD]{@link https://svnweb.freebsd.org/base/release/12.2.0/lib/msun/src/s_expm1.c}. The implementation follows the original, but has been modified for JavaScript.
*
* ```text
* Copyright (C) 2004 by Sun Microsystems, Inc. All rights reserved.
*
* Developed at SunPro, a Sun Microsystems, Inc. business.
* Permission to use, copy, modify, and distribute this
* software is freely granted, provided that this notice
* is preserved.
* ```
*/
/**
* @license Apache-2.0
*
* Copyright (c) 2018 The Stdlib Authors.
*
* Licensed under the Apache License, Version 2.0 (the "License");
* you may not use this file except in compliance with the License.
* You may obtain a copy of the License at
*
*    http://www.apache.org/licenses/LICENSE-2.0
*
* Unless required by applicable law or agreed to in writing, software
* distributed under the License is distributed on an "AS IS" BASIS,
* WITHOUT WARRANTIES OR CONDITIONS OF ANY KIND, either express or implied.
* See the License for the specific language governing permissions and
* limitations under the License.
*
*
* ## Notice
*
* The following copyright, license, and long comment were part of the original implementation available as part of [FDLIBM]{@link http://www.netlib.org/fdlibm/s_log1p.c}. The implementation follows the original, but has been modified for JavaScript.
*
* ```text
* Copyright (C) 1993 by Sun Microsystems, Inc. All rights reserved.
*
* Developed at SunPro, a Sun Microsystems, Inc. business.
* Permission to use, copy, modify, and distribute this
* software is freely granted, provided that this notice
* is preserved.
* ```
*/
/**
* @license Apache-2.0
*
* Copyright (c) 2018 The Stdlib Authors.
*
* Licensed under the Apache License, Version 2.0 (the "License");
* you may not use this file except in compliance with the License.
* You may obtain a copy of the License at
*
*    http://www.apache.org/licenses/LICENSE-2.0
*
* Unless required by applicable law or agreed to in writing, software
* distributed under the License is distributed on an "AS IS" BASIS,
* WITHOUT WARRANTIES OR CONDITIONS OF ANY KIND, either express or implied.
* See the License for the specific language governing permissions and
* limitations under the License.
*
*
* ## Notice
*
* The original C code, long comment, copyright, license, and constants are from [Cephes]{@link http://www.netlib.org/cephes}. The implementation follows the original, but has been modified for JavaScript.
*
* ```text
* Copyright 1984, 1995, 2000 by Stephen L. Moshier
*
* Some software in this archive may be from the book _Methods and Programs for Mathematical Functions_ (Prentice-Hall or Simon & Schuster International, 1989) or from the Cephes Mathematical Library, a commercial product. In either event, it is copyrighted by the author. What you see here may be used freely but it comes with no support or guarantee.
*
* Stephen L. Moshier
* moshier@na-net.ornl.gov
* ```
*/
/**
* @license Apache-2.0
*
* Copyright (c) 2018 The Stdlib Authors.
*
* Licensed under the Apache License, Version 2.0 (the "License");
* you may not use this file except in compliance with the License.
* You may obtain a copy of the License at
*
*    http://www.apache.org/licenses/LICENSE-2.0
*
* Unless required by applicable law or agreed to in writing, software
* distributed under the License is distributed on an "AS IS" BASIS,
* WITHOUT WARRANTIES OR CONDITIONS OF ANY KIND, either express or implied.
* See the License for the specific language governing permissions and
* limitations under the License.
*
*
* ## Notice
*
* The following copyrights, licenses, and long comment were part of the original implementation available as part of [Go]{@link https://github.com/golang/go/blob/cb07765045aed5104a3df31507564ac99e6ddce8/src/math/exp.go}, which in turn was based on an implementation available as part of [FreeBSD]{@link https://svnweb.freebsd.org/base/release/9.3.0/lib/msun/src/e_exp.c}. The implementation follows the original, but has been modified for JavaScript.
*
* ```text
* Copyright (c) 2009 The Go Authors. All rights reserved.
*
* Redistribution and use in source and binary forms, with or without
* modification, are permitted provided that the following conditions are
* met:
*
*    * Redistributions of source code must retain the above copyright
* notice, this list of conditions and the following disclaimer.
*    * Redistributions in binary form must reproduce the above
* copyright notice, this list of conditions and the following disclaimer
* in the documentation and/or other materials provided with the
* distribution.
*    * Neither the name of Google Inc. nor the names of its
* contributors may be used to endorse or promote products derived from
* this software without specific prior written permission.
*
* THIS SOFTWARE IS PROVIDED BY THE COPYRIGHT HOLDERS AND CONTRIBUTORS
* "AS IS" AND ANY EXPRESS OR IMPLIED WARRANTIES, INCLUDING, BUT NOT
* LIMITED TO, THE IMPLIED WARRANTIES OF MERCHANTABILITY AND FITNESS FOR
* A PARTICULAR PURPOSE ARE DISCLAIMED. IN NO EVENT SHALL THE COPYRIGHT
* OWNER OR CONTRIBUTORS BE LIABLE FOR ANY DIRECT, INDIRECT, INCIDENTAL,
* SPECIAL, EXEMPLARY, OR CONSEQUENTIAL DAMAGES (INCLUDING, BUT NOT
* LIMITED TO, PROCUREMENT OF SUBSTITUTE GOODS OR SERVICES; LOSS OF USE,
* DATA, OR PROFITS; OR BUSINESS INTERRUPTION) HOWEVER CAUSED AND ON ANY
* THEORY OF LIABILITY, WHETHER IN CONTRACT, STRICT LIABILITY, OR TORT
* (INCLUDING NEGLIGENCE OR OTHERWISE) ARISING IN ANY WAY OUT OF THE USE
* OF THIS SOFTWARE, EVEN IF ADVISED OF THE POSSIBILITY OF SUCH DAMAGE.
* ```
*
* ```text
* Copyright (C) 2004 by Sun Microsystems, Inc. All rights reserved.
*
* Developed at SunPro, a Sun Microsystems, Inc. business.
* Permission to use, copy, modify, and distribute this
* software is freely granted, provided that this notice
* is preserved.
* ```
*/
/**
* @license Apache-2.0
*
* Copyright (c) 2018 The Stdlib Authors.
*
* Licensed under the Apache License, Version 2.0 (the "License");
* you may not use this file except in compliance with the License.
* You may obtain a copy of the License at
*
*    http://www.apache.org/licenses/LICENSE-2.0
*
* Unless required by applicable law or agreed to in writing, software
* distributed under the License is distributed on an "AS IS" BASIS,
* WITHOUT WARRANTIES OR CONDITIONS OF ANY KIND, either express or implied.
* See the License for the specific language governing permissions and
* limitations under the License.
*
*
* ## Notice
*
* The following copyright and license were part of the original implementation available as part of [FreeBSD]{@link https://svnweb.freebsd.org/base/release/9.3.0/lib/msun/src/s_pow.c}. The implementation follows the original, but has been modified for JavaScript.
*
* ```text
* Copyright (C) 2004 by Sun Microsystems, Inc. All rights reserved.
*
* Developed at SunPro, a Sun Microsystems, Inc. business.
* Permission to use, copy, modify, and distribute this
* software is freely granted, provided that this notice
* is preserved.
* ```
*/
/**
* @license Apache-2.0
*
* Copyright (c) 2024 The Stdlib Authors.
*
* Licensed under the Apache License, Version 2.0 (the "License");
* you may not use this file except in compliance with the License.
* You may obtain a copy of the License at
*
*    http://www.apache.org/licenses/LICENSE-2.0
*
* Unless required by applicable law or agreed to in writing, software
* distributed under the License is distributed on an "AS IS" BASIS,
* WITHOUT WARRANTIES OR CONDITIONS OF ANY KIND, either express or implied.
* See the License for the specific language governing permissions and
* limitations under the License.
*/
/**
* @license Apache-2.0
*
* Copyright (c) 2018 The Stdlib Authors.
*
* Licensed under the Apache License, Version 2.0 (the "License");
* you may not use this file except in compliance with the License.
* You may obtain a copy of the License at
*
*    http://www.apache.org/licenses/LICENSE-2.0
*
* Unless required by applicable law or agreed to in writing, software
* distributed under the License is distributed on an "AS IS" BASIS,
* WITHOUT WARRANTIES OR CONDITIONS OF ANY KIND, either express or implied.
* See the License for the specific language governing permissions and
* limitations under the License.
*
*
* ## Notice
*
* The original C++ code and copyright notice are from the [Boost library]{http://www.boost.org/doc/libs/1_85_0/boost/math/special_functions/beta.hpp}. The implementation has been modified for JavaScript.
*
* ```text
* (C) Copyright John Maddock 2006.
*
* Use, modification and distribution are subject to the
* Boost Software License, Version 1.0. (See accompanying file
* LICENSE or copy at http://www.boost.org/LICENSE_1_0.txt)
* ```
*/
/**
* @license Apache-2.0
*
* Copyright (c) 2018 The Stdlib Authors.
*
* Licensed under the Apache License, Version 2.0 (the "License");
* you may not use this file except in compliance with the License.
* You may obtain a copy of the License at
*
*    http://www.apache.org/licenses/LICENSE-2.0
*
* Unless required by applicable law or agreed to in writing, software
* distributed under the License is distributed on an "AS IS" BASIS,
* WITHOUT WARRANTIES OR CONDITIONS OF ANY KIND, either express or implied.
* See the License for the specific language governing permissions and
* limitations under the License.
*
*
* ## Notice
*
* The following copyright, license, and long comment were part of the original implementation available as part of [FreeBSD]{@link https://svnweb.freebsd.org/base/release/12.2.0/lib/msun/src/k_cos.c}. The implementation follows the original, but has been modified for JavaScript.
*
* ```text
* Copyright (C) 1993 by Sun Microsystems, Inc. All rights reserved.
*
* Developed at SunPro, a Sun Microsystems, Inc. business.
* Permission to use, copy, modify, and distribute this
* software is freely granted, provided that this notice
* is preserved.
* ```
*/
/**
* @license Apache-2.0
*
* Copyright (c) 2018 The Stdlib Authors.
*
* Licensed under the Apache License, Version 2.0 (the "License");
* you may not use this file except in compliance with the License.
* You may obtain a copy of the License at
*
*    http://www.apache.org/licenses/LICENSE-2.0
*
* Unless required by applicable law or agreed to in writing, software
* distributed under the License is distributed on an "AS IS" BASIS,
* WITHOUT WARRANTIES OR CONDITIONS OF ANY KIND, either express or implied.
* See the License for the specific language governing permissions and
* limitations under the License.
*
*
* ## Notice
*
* The following copyright, license, and long comment were part of the original implementation available as part of [FreeBSD]{@link https://svnweb.freebsd.org/base/release/9.3.0/lib/msun/src/k_sin.c}. The implementation follows the original, but has been modified for JavaScript.
*
* ```text
* Copyright (C) 1993 by Sun Microsystems, Inc. All rights reserved.
*
* Developed at SunPro, a Sun Microsystems, Inc. business.
* Permission to use, copy, modify, and distribute this
* software is freely granted, provided that this notice
* is preserved.
* ```
*/
/**
* @license Apache-2.0
*
* Copyright (c) 2018 The Stdlib Authors.
*
* Licensed under the Apache License, Version 2.0 (the "License");
* you may not use this file except in compliance with the License.
* You may obtain a copy of the License at
*
*    http://www.apache.org/licenses/LICENSE-2.0
*
* Unless required by applicable law or agreed to in writing, software
* distributed under the License is distributed on an "AS IS" BASIS,
* WITHOUT WARRANTIES OR CONDITIONS OF ANY KIND, either express or implied.
* See the License for the specific language governing permissions and
* limitations under the License.
*
*
* ## Notice
*
* The following copyright and license were part of the original implementation available as part of [FreeBSD]{@link https://svnweb.freebsd.org/base/release/9.3.0/lib/msun/src/k_rem_pio2.c}. The implementation follows the original, but has been modified for JavaScript.
*
* ```text
* Copyright (C) 1993 by Sun Microsystems, Inc. All rights reserved.
*
* Developed at SunPro, a Sun Microsystems, Inc. business.
* Permission to use, copy, modify, and distribute this
* software is freely granted, provided that this notice
* is preserved.
* ```
*/
/**
* @license Apache-2.0
*
* Copyright (c) 2018 The Stdlib Authors.
*
* Licensed under the Apache License, Version 2.0 (the "License");
* you may not use this file except in compliance with the License.
* You may obtain a copy of the License at
*
*    http://www.apache.org/licenses/LICENSE-2.0
*
* Unless required by applicable law or agreed to in writing, software
* distributed under the License is distributed on an "AS IS" BASIS,
* WITHOUT WARRANTIES OR CONDITIONS OF ANY KIND, either express or implied.
* See the License for the specific language governing permissions and
* limitations under the License.
*
*
* ## Notice
*
* The following copyright and license were part of the original implementation available as part of [FreeBSD]{@link https://svnweb.freebsd.org/base/release/9.3.0/lib/msun/src/e_rem_pio2.c}. The implementation follows the original, but has been modified for JavaScript.
*
* ```text
* Copyright (C) 1993 by Sun Microsystems, Inc. All rights reserved.
*
* Developed at SunPro, a Sun Microsystems, Inc. business.
* Permission to use, copy, modify, and distribute this
* software is freely granted, provided that this notice
* is preserved.
*
* Optimized by Bruce D. Evans.
* ```
*/
/**
* @license Apache-2.0
*
* Copyright (c) 2018 The Stdlib Authors.
*
* Licensed under the Apache License, Version 2.0 (the "License");
* you may not use this file except in compliance with the License.
* You may obtain a copy of the License at
*
*    http://www.apache.org/licenses/LICENSE-2.0
*
* Unless required by applicable law or agreed to in writing, software
* distributed under the License is distributed on an "AS IS" BASIS,
* WITHOUT WARRANTIES OR CONDITIONS OF ANY KIND, either express or implied.
* See the License for the specific language governing permissions and
* limitations under the License.
*
*
* ## Notice
*
* The following copyright, license, and long comment were part of the original implementation available as part of [FreeBSD]{@link https://svnweb.freebsd.org/base/release/9.3.0/lib/msun/src/s_sin.c}. The implementation follows the original, but has been modified for JavaScript.
*
* ```text
* Copyright (C) 1993 by Sun Microsystems, Inc. All rights reserved.
*
* Developed at SunPro, a Sun Microsystems, Inc. business.
* Permission to use, copy, modify, and distribute this
* software is freely granted, provided that this notice
* is preserved.
* ```
*/
/**
* @license Apache-2.0
*
* Copyright (c) 2018 The Stdlib Authors.
*
* Licensed under the Apache License, Version 2.0 (the "License");
* you may not use this file except in compliance with the License.
* You may obtain a copy of the License at
*
*    http://www.apache.org/licenses/LICENSE-2.0
*
* Unless required by applicable law or agreed to in writing, software
* distributed under the License is distributed on an "AS IS" BASIS,
* WITHOUT WARRANTIES OR CONDITIONS OF ANY KIND, either express or implied.
* See the License for the specific language governing permissions and
* limitations under the License.
*
*
* ## Notice
*
* The original C code, copyright, license, and constants are from [Cephes]{@link http://www.netlib.org/cephes}. The implementation follows the original, but has been modified for JavaScript.
*
* ```text
* Copyright 1984, 1987, 1989, 1992, 2000 by Stephen L. Moshier
*
* Some software in this archive may be from the book _Methods and Programs for Mathematical Functions_ (Prentice-Hall or Simon & Schuster International, 1989) or from the Cephes Mathematical Library, a commercial product. In either event, it is copyrighted by the author. What you see here may be used freely but it comes with no support or guarantee.
*
* Stephen L. Moshier
* moshier@na-net.ornl.gov
* ```
*/
/**
* @license Apache-2.0
*
* Copyright (c) 2018 The Stdlib Authors.
*
* Licensed under the Apache License, Version 2.0 (the "License");
* you may not use this file except in compliance with the License.
* You may obtain a copy of the License at
*
*    http://www.apache.org/licenses/LICENSE-2.0
*
* Unless required by applicable law or agreed to in writing, software
* distributed under the License is distributed on an "AS IS" BASIS,
* WITHOUT WARRANTIES OR CONDITIONS OF ANY KIND, either express or implied.
* See the License for the specific language governing permissions and
* limitations under the License.
*
*
* ## Notice
*
* The original C code, long comment, copyright, license, and constants are from [Cephes]{@link http://www.netlib.org/cephes}. The implementation follows the original, but has been modified for JavaScript.
*
* ```text
* Copyright 1984, 1987, 1989, 1992, 2000 by Stephen L. Moshier
*
* Some software in this archive may be from the book _Methods and Programs for Mathematical Functions_ (Prentice-Hall or Simon & Schuster International, 1989) or from the Cephes Mathematical Library, a commercial product. In either event, it is copyrighted by the author. What you see here may be used freely but it comes with no support or guarantee.
*
* Stephen L. Moshier
* moshier@na-net.ornl.gov
* ```
*/
/**
* @license Apache-2.0
*
* Copyright (c) 2025 The Stdlib Authors.
*
* Licensed under the Apache License, Version 2.0 (the "License");
* you may not use this file except in compliance with the License.
* You may obtain a copy of the License at
*
*    http://www.apache.org/licenses/LICENSE-2.0
*
* Unless required by applicable law or agreed to in writing, software
* distributed under the License is distributed on an "AS IS" BASIS,
* WITHOUT WARRANTIES OR CONDITIONS OF ANY KIND, either express or implied.
* See the License for the specific language governing permissions and
* limitations under the License.
*/
/**
* @license Apache-2.0
*
* Copyright (c) 2018 The Stdlib Authors.
*
* Licensed under the Apache License, Version 2.0 (the "License");
* you may not use this file except in compliance with the License.
* You may obtain a copy of the License at
*
*    http://www.apache.org/licenses/LICENSE-2.0
*
* Unless required by applicable law or agreed to in writing, software
* distributed under the License is distributed on an "AS IS" BASIS,
* WITHOUT WARRANTIES OR CONDITIONS OF ANY KIND, either express or implied.
* See the License for the specific language governing permissions and
* limitations under the License.
*
*
* ## Notice
*
* The original C++ code and copyright notice are from the [Boost library]{@link http://www.boost.org/doc/libs/1_64_0/boost/math/special_functions/lanczos.hpp}. The implementation has been modified for JavaScript.
*
* ```text
* Copyright John Maddock 2006.
*
* Use, modification and distribution are subject to the
* Boost Software License, Version 1.0. (See accompanying file
* LICENSE or copy at http://www.boost.org/LICENSE_1_0.txt)
* ```
*/
/**
* @license Apache-2.0
*
* Copyright (c) 2018 The Stdlib Authors.
*
* Licensed under the Apache License, Version 2.0 (the "License");
* you may not use this file except in compliance with the License.
* You may obtain a copy of the License at
*
*    http://www.apache.org/licenses/LICENSE-2.0
*
* Unless required by applicable law or agreed to in writing, software
* distributed under the License is distributed on an "AS IS" BASIS,
* WITHOUT WARRANTIES OR CONDITIONS OF ANY KIND, either express or implied.
* See the License for the specific language governing permissions and
* limitations under the License.
*
*
* ## Notice
*
* The original C++ code and copyright notice are from the [Boost library]{@link http://www.boost.org/doc/libs/1_85_0/boost/math/special_functions/gamma.hpp}. The implementation has been modified for JavaScript.
*
* ```text
* Copyright John Maddock 2006-7, 2013-14.
* Copyright Paul A. Bristow 2007, 2013-14.
* Copyright Nikhar Agrawal 2013-14.
* Copyright Christopher Kormanyos 2013-14.
*
* Use, modification and distribution are subject to the
* Boost Software License, Version 1.0. (See accompanying file
* LICENSE or copy at http://www.boost.org/LICENSE_1_0.txt)
* ```
*/
/**
* @license Apache-2.0
*
* Copyright (c) 2018 The Stdlib Authors.
*
* Licensed under the Apache License, Version 2.0 (the "License");
* you may not use this file except in compliance with the License.
* You may obtain a copy of the License at
*
*    http://www.apache.org/licenses/LICENSE-2.0
*
* Unless required by applicable law or agreed to in writing, software
* distributed under the License is distributed on an "AS IS" BASIS,
* WITHOUT WARRANTIES OR CONDITIONS OF ANY KIND, either express or implied.
* See the License for the specific language governing permissions and
* limitations under the License.
*
*
* ## Notice
*
* The following copyright and license were part of the original implementation available as part of [FreeBSD]{@link https://svnweb.freebsd.org/base/release/9.3.0/lib/msun/src/e_log.c}. The implementation follows the original, but has been modified for JavaScript.
*
* ```text
* Copyright (C) 1993 by Sun Microsystems, Inc. All rights reserved.
*
* Developed at SunPro, a Sun Microsystems, Inc. business.
* Permission to use, copy, modify, and distribute this
* software is freely granted, provided that this notice
* is preserved.
* ```
*/
/**
* @license Apache-2.0
*
* Copyright (c) 2018 The Stdlib Authors.
*
* Licensed under the Apache License, Version 2.0 (the "License");
* you may not use this file except in compliance with the License.
* You may obtain a copy of the License at
*
*    http://www.apache.org/licenses/LICENSE-2.0
*
* Unless required by applicable law or agreed to in writing, software
* distributed under the License is distributed on an "AS IS" BASIS,
* WITHOUT WARRANTIES OR CONDITIONS OF ANY KIND, either express or implied.
* See the License for the specific language governing permissions and
* limitations under the License.
*
*
* ## Notice
*
* The following copyright, license, and long comment were part of the original implementation available as part of [FreeBSD]{@link https://svnweb.freebsd.org/base/release/9.3.0/lib/msun/src/s_cos.c}. The implementation follows the original, but has been modified for JavaScript.
*
* ```text
* Copyright (C) 1993 by Sun Microsystems, Inc. All rights reserved.
*
* Developed at SunPro, a Sun Microsystems, Inc. business.
* Permission to use, copy, modify, and distribute this
* software is freely granted, provided that this notice
* is preserved.
* ```
*/
/**
* @license Apache-2.0
*
* Copyright (c) 2018 The Stdlib Authors.
*
* Licensed under the Apache License, Version 2.0 (the "License");
* you may not use this file except in compliance with the License.
* You may obtain a copy of the License at
*
*    http://www.apache.org/licenses/LICENSE-2.0
*
* Unless required by applicable law or agreed to in writing, software
* distributed under the License is distributed on an "AS IS" BASIS,
* WITHOUT WARRANTIES OR CONDITIONS OF ANY KIND, either express or implied.
* See the License for the specific language governing permissions and
* limitations under the License.
*
*
* ## Notice
*
* The following copyright, license, and long comment were part of the original implementation available as part of [FreeBSD]{@link https://svnweb.freebsd.org/base/release/12.2.0/lib/msun/src/e_lgamma_r.c}. The implementation follows the original, but has been modified for JavaScript.
*
* ```text
* Copyright (C) 1993 by Sun Microsystems, Inc. All rights reserved.
*
* Developed at SunPro, a Sun Microsystems, Inc. business.
* Permission to use, copy, modify, and distribute this
* software is freely granted, provided that this notice
* is preserved.
* ```
*/
/**
* @license Apache-2.0
*
* Copyright (c) 2025 The Stdlib Authors.
*
* Licensed under the Apache License, Version 2.0 (the "License");
* you may not use this file except in compliance with the License.
* You may obtain a copy of the License at
*
*    http://www.apache.org/licenses/LICENSE-2.0
*
* Unless required by applicable law or agreed to in writing, software
* distributed under the License is distributed on an "AS IS" BASIS,
* WITHOUT WARRANTIES OR CONDITIONS OF ANY KIND, either express or implied.
* See the License for the specific language governing permissions and
* limitations under the License.
*
*
* ## Notice
*
* The original C++ code and copyright notice are from the [Boost library]{@link https://www.boost.org/doc/libs/1_88_0/boost/math/special_functions/gamma.hpp}. The implementation has been modified for JavaScript.
*
* ```text
* (C) Copyright John Maddock 2006.
* (C) Copyright Paul A. Bristow 2007.
*
* Use, modification and distribution are subject to the
* Boost Software License, Version 1.0. (See accompanying file
* LICENSE or copy at http://www.boost.org/LICENSE_1_0.txt)
* ```
*/
/**
* @license Apache-2.0
*
* Copyright (c) 2018 The Stdlib Authors.
*
* Licensed under the Apache License, Version 2.0 (the "License");
* you may not use this file except in compliance with the License.
* You may obtain a copy of the License at
*
*    http://www.apache.org/licenses/LICENSE-2.0
*
* Unless required by applicable law or agreed to in writing, software
* distributed under the License is distributed on an "AS IS" BASIS,
* WITHOUT WARRANTIES OR CONDITIONS OF ANY KIND, either express or implied.
* See the License for the specific language governing permissions and
* limitations under the License.
*
*
* ## Notice
*
* The original C++ code and copyright notice are from the [Boost library]{@link https://www.boost.org/doc/libs/1_88_0/boost/math/special_functions/gamma.hpp}. The implementation has been modified for JavaScript.
*
* ```text
* (C) Copyright John Maddock 2006.
* (C) Copyright Paul A. Bristow 2007.
*
* Use, modification and distribution are subject to the
* Boost Software License, Version 1.0. (See accompanying file
* LICENSE or copy at http://www.boost.org/LICENSE_1_0.txt)
* ```
*/
/**
* @license Apache-2.0
*
* Copyright (c) 2018 The Stdlib Authors.
*
* Licensed under the Apache License, Version 2.0 (the "License");
* you may not use this file except in compliance with the License.
* You may obtain a copy of the License at
*
*    http://www.apache.org/licenses/LICENSE-2.0
*
* Unless required by applicable law or agreed to in writing, software
* distributed under the License is distributed on an "AS IS" BASIS,
* WITHOUT WARRANTIES OR CONDITIONS OF ANY KIND, either express or implied.
* See the License for the specific language governing permissions and
* limitations under the License.
*
*
* ## Notice
*
* The following copyright, license, and long comment were part of the original implementation available as part of [FreeBSD]{@link https://svnweb.freebsd.org/base/release/9.3.0/lib/msun/src/s_erf.c}. The implementation follows the original, but has been modified for JavaScript.
*
* ```text
* Copyright (C) 1993 by Sun Microsystems, Inc. All rights reserved.
*
* Developed at SunPro, a Sun Microsystems, Inc. business.
* Permission to use, copy, modify, and distribute this
* software is freely granted, provided that this notice
* is preserved.
* ```
*/
/**
* @license Apache-2.0
*
* Copyright (c) 2023 The Stdlib Authors.
*
* Licensed under the Apache License, Version 2.0 (the "License");
* you may not use this file except in compliance with the License.
* You may obtain a copy of the License at
*
*    http://www.apache.org/licenses/LICENSE-2.0
*
* Unless required by applicable law or agreed to in writing, software
* distributed under the License is distributed on an "AS IS" BASIS,
* WITHOUT WARRANTIES OR CONDITIONS OF ANY KIND, either express or implied.
* See the License for the specific language governing permissions and
* limitations under the License.
*
*
* ## Notice
*
* The original C++ code and copyright notice are from the [Boost library]{@link https://www.boost.org/doc/libs/1_83_0/boost/math/special_functions/log1p.hpp}. The implementation has been modified for JavaScript.
*
* ```text
* (C) Copyright John Maddock 2005-2006.
*
* Use, modification and distribution are subject to the
* Boost Software License, Version 1.0. (See accompanying file
* LICENSE or copy at http://www.boost.org/LICENSE_1_0.txt)
*/
/**
* @license Apache-2.0
*
* Copyright (c) 2023 The Stdlib Authors.
*
* Licensed under the Apache License, Version 2.0 (the "License");
* you may not use this file except in compliance with the License.
* You may obtain a copy of the License at
*
*    http://www.apache.org/licenses/LICENSE-2.0
*
* Unless required by applicable law or agreed to in writing, software
* distributed under the License is distributed on an "AS IS" BASIS,
* WITHOUT WARRANTIES OR CONDITIONS OF ANY KIND, either express or implied.
* See the License for the specific language governing permissions and
* limitations under the License.
*
*
* ## Notice
*
* The original C++ code and copyright notice are from the [Boost library]{@link https://www.boost.org/doc/libs/1_83_0/boost/math/special_functions/log1p.hpp}. The implementation has been modified for JavaScript.
*
* ```text
* (C) Copyright John Maddock 2005-2006.
*
* Use, modification and distribution are subject to the
* Boost Software License, Version 1.0. (See accompanying file
* LICENSE or copy at http://www.boost.org/LICENSE_1_0.txt)
* ```
*/
/**
* @license Apache-2.0
*
* Copyright (c) 2023 The Stdlib Authors.
*
* Licensed under the Apache License, Version 2.0 (the "License");
* you may not use this file except in compliance with the License.
* You may obtain a copy of the License at
*
*    http://www.apache.org/licenses/LICENSE-2.0
*
* Unless required by applicable law or agreed to in writing, software
* distributed under the License is distributed on an "AS IS" BASIS,
* WITHOUT WARRANTIES OR CONDITIONS OF ANY KIND, either express or implied.
* See the License for the specific language governing permissions and
* limitations under the License.
*/
/**
* @license Apache-2.0
*
* Copyright (c) 2018 The Stdlib Authors.
*
* Licensed under the Apache License, Version 2.0 (the "License");
* you may not use this file except in compliance with the License.
* You may obtain a copy of the License at
*
*    http://www.apache.org/licenses/LICENSE-2.0
*
* Unless required by applicable law or agreed to in writing, software
* distributed under the License is distributed on an "AS IS" BASIS,
* WITHOUT WARRANTIES OR CONDITIONS OF ANY KIND, either express or implied.
* See the License for the specific language governing permissions and
* limitations under the License.
*
*
* ## Notice
*
* The original C++ code and copyright notice are from the [Boost library]{@link http://www.boost.org/doc/libs/1_64_0/boost/math/special_functions/gamma.hpp}. The implementation has been modified for JavaScript.
*
* ```text
* Copyright John Maddock 2006-7, 2013-14.
* Copyright Paul A. Bristow 2007, 2013-14.
* Copyright Nikhar Agrawal 2013-14.
* Copyright Christopher Kormanyos 2013-14.
*
* Use, modification and distribution are subject to the
* Boost Software License, Version 1.0. (See accompanying file
* LICENSE or copy at http://www.boost.org/LICENSE_1_0.txt)
* ```
*/
/**
* @license Apache-2.0
*
* Copyright (c) 2018 The Stdlib Authors.
*
* Licensed under the Apache License, Version 2.0 (the "License");
* you may not use this file except in compliance with the License.
* You may obtain a copy of the License at
*
*    http://www.apache.org/licenses/LICENSE-2.0
*
* Unless required by applicable law or agreed to in writing, software
* distributed under the License is distributed on an "AS IS" BASIS,
* WITHOUT WARRANTIES OR CONDITIONS OF ANY KIND, either express or implied.
* See the License for the specific language governing permissions and
* limitations under the License.
*
*
* ## Notice
*
* The original C++ code and copyright notice are from the [Boost library]{@link http://www.boost.org/doc/libs/1_85_0/boost/math/special_functions/powm1.hpp}. The implementation follows the original, but has been modified for JavaScript.
*
* ```text
* (C) Copyright John Maddock 2006.
*
* Use, modification and distribution are subject to the
* Boost Software License, Version 1.0. (See accompanying file
* LICENSE or copy at http://www.boost.org/LICENSE_1_0.txt)
* ```
*/
/**
* @license Apache-2.0
*
* Copyright (c) 2018 The Stdlib Authors.
*
* Licensed under the Apache License, Version 2.0 (the "License");
* you may not use this file except in compliance with the License.
* You may obtain a copy of the License at
*
*    http://www.apache.org/licenses/LICENSE-2.0
*
* Unless required by applicable law or agreed to in writing, software
* distributed under the License is distributed on an "AS IS" BASIS,
* WITHOUT WARRANTIES OR CONDITIONS OF ANY KIND, either express or implied.
* See the License for the specific language governing permissions and
* limitations under the License.
*
*
* ## Notice
*
* The original C++ code and copyright notice are from the [Boost library]{@link http://www.boost.org/doc/libs/1_85_0/boost/math/special_functions/detail/lgamma_small.hpp}. The implementation has been modified for JavaScript.
*
* ```text
* (C) Copyright John Maddock 2006-7, 2013-14.
* (C) Copyright Paul A. Bristow 2007, 2013-14.
* (C) Copyright Nikhar Agrawal 2013-14.
* (C) Copyright Christopher Kormanyos 2013-14.
*
* Use, modification and distribution are subject to the
* Boost Software License, Version 1.0. (See accompanying file
* LICENSE or copy at http://www.boost.org/LICENSE_1_0.txt)
* ```
*/
/**
* @license Apache-2.0
*
* Copyright (c) 2018 The Stdlib Authors.
*
* Licensed under the Apache License, Version 2.0 (the "License");
* you may not use this file except in compliance with the License.
* You may obtain a copy of the License at
*
*    http://www.apache.org/licenses/LICENSE-2.0
*
* Unless required by applicable law or agreed to in writing, software
* distributed under the License is distributed on an "AS IS" BASIS,
* WITHOUT WARRANTIES OR CONDITIONS OF ANY KIND, either express or implied.
* See the License for the specific language governing permissions and
* limitations under the License.
*
*
* ## Notice
*
* The original C++ code and copyright notice are from the [Boost library]{@link http://www.boost.org/doc/libs/1_85_0/boost/math/special_functions/gamma.hpp}. The implementation has been modified for JavaScript.
*
* ```text
* (C) Copyright John Maddock 2006-7, 2013-14.
* (C) Copyright Paul A. Bristow 2007, 2013-14.
* (C) Copyright Nikhar Agrawal 2013-14.
* (C) Copyright Christopher Kormanyos 2013-14.
*
* Use, modification and distribution are subject to the
* Boost Software License, Version 1.0. (See accompanying file
* LICENSE or copy at http://www.boost.org/LICENSE_1_0.txt)
* ```
*/
/**
* @license Apache-2.0
*
* Copyright (c) 2018 The Stdlib Authors.
*
* Licensed under the Apache License, Version 2.0 (the "License");
* you may not use this file except in compliance with the License.
* You may obtain a copy of the License at
*
*    http://www.apache.org/licenses/LICENSE-2.0
*
* Unless required by applicable law or agreed to in writing, software
* distributed under the License is distributed on an "AS IS" BASIS,
* WITHOUT WARRANTIES OR CONDITIONS OF ANY KIND, either express or implied.
* See the License for the specific language governing permissions and
* limitations under the License.
*
*
* ## Notice
*
* The original C++ code and copyright notice are from the [Boost library]{@link https://www.boost.org/doc/libs/1_88_0/boost/math/special_functions/gamma.hpp}. The implementation has been modified for JavaScript.
*
* ```text
* (C) Copyright John Maddock 2006-7, 2013-14.
* (C) Copyright Paul A. Bristow 2007, 2013-14.
* (C) Copyright Nikhar Agrawal 2013-14.
* (C) Christopher Kormanyos 2013-14.
*
* Use, modification and distribution are subject to the
* Boost Software License, Version 1.0. (See accompanying file
* LICENSE or copy at http://www.boost.org/LICENSE_1_0.txt)
* ```
*/
/**
* @license Apache-2.0
*
* Copyright (c) 2018 The Stdlib Authors.
*
* Licensed under the Apache License, Version 2.0 (the "License");
* you may not use this file except in compliance with the License.
* You may obtain a copy of the License at
*
*    http://www.apache.org/licenses/LICENSE-2.0
*
* Unless required by applicable law or agreed to in writing, software
* distributed under the License is distributed on an "AS IS" BASIS,
* WITHOUT WARRANTIES OR CONDITIONS OF ANY KIND, either express or implied.
* See the License for the specific language governing permissions and
* limitations under the License.
*
*
* ## Notice
*
* The original C++ code and copyright notice are from the [Boost library]{@link http://www.boost.org/doc/libs/1_37_0/boost/math/special_functions/gamma.hpp}. The implementation has been modified for JavaScript.
*
* ```text
* (C) Copyright John Maddock 2006.
* (C) Copyright Paul A. Bristow 2007.
*
* Use, modification and distribution are subject to the
* Boost Software License, Version 1.0. (See accompanying file
* LICENSE or copy at http://www.boost.org/LICENSE_1_0.txt)
* ```
*/
/**
* @license Apache-2.0
*
* Copyright (c) 2018 The Stdlib Authors.
*
* Licensed under the Apache License, Version 2.0 (the "License");
* you may not use this file except in compliance with the License.
* You may obtain a copy of the License at
*
*    http://www.apache.org/licenses/LICENSE-2.0
*
* Unless required by applicable law or agreed to in writing, software
* distributed under the License is distributed on an "AS IS" BASIS,
* WITHOUT WARRANTIES OR CONDITIONS OF ANY KIND, either express or implied.
* See the License for the specific language governing permissions and
* limitations under the License.
*
*
* ## Notice
*
* The original C++ code and copyright notice are from the [Boost library]{@link http://www.boost.org/doc/libs/1_61_0/boost/math/special_functions/beta.hpp}. The implementation has been modified for JavaScript.
*
* ```text
* (C) Copyright John Maddock 2006.
*
* Use, modification and distribution are subject to the
* Boost Software License, Version 1.0. (See accompanying file
* LICENSE or copy at http://www.boost.org/LICENSE_1_0.txt)
* ```
*/
/**
* @license Apache-2.0
*
* Copyright (c) 2018 The Stdlib Authors.
*
* Licensed under the Apache License, Version 2.0 (the "License");
* you may not use this file except in compliance with the License.
* You may obtain a copy of the License at
*
*    http://www.apache.org/licenses/LICENSE-2.0
*
* Unless required by applicable law or agreed to in writing, software
* distributed under the License is distributed on an "AS IS" BASIS,
* WITHOUT WARRANTIES OR CONDITIONS OF ANY KIND, either express or implied.
* See the License for the specific language governing permissions and
* limitations under the License.
*
*
* ## Notice
*
* The original C++ code and copyright notice are from the [Boost library]{@link http://www.boost.org/doc/libs/1_37_0/boost/math/special_functions/beta.hpp}. The implementation has been modified for JavaScript.
*
* ```text
* (C) Copyright John Maddock 2006.
*
* Use, modification and distribution are subject to the
* Boost Software License, Version 1.0. (See accompanying file
* LICENSE or copy at http://www.boost.org/LICENSE_1_0.txt)
* ```
*/
/**
* @license Apache-2.0
*
* Copyright (c) 2018 The Stdlib Authors.
*
* Licensed under the Apache License, Version 2.0 (the "License");
* you may not use this file except in compliance with the License.
* You may obtain a copy of the License at
*
*    http://www.apache.org/licenses/LICENSE-2.0
*
* Unless required by applicable law or agreed to in writing, software
* distributed under the License is distributed on an "AS IS" BASIS,
* WITHOUT WARRANTIES OR CONDITIONS OF ANY KIND, either express or implied.
* See the License for the specific language governing permissions and
* limitations under the License.
*
*
* ## Notice
*
* The original C++ code and copyright notice are from the [Boost library]{@link http://www.boost.org/doc/libs/1_62_0/boost/math/special_functions/beta.hpp}. The implementation has been modified for JavaScript.
*
* ```text
* (C) Copyright John Maddock 2006.
*
* Use, modification and distribution are subject to the
* Boost Software License, Version 1.0. (See accompanying file
* LICENSE or copy at http://www.boost.org/LICENSE_1_0.txt)
* ```
*/
/**
* @license Apache-2.0
*
* Copyright (c) 2018 The Stdlib Authors.
*
* Licensed under the Apache License, Version 2.0 (the "License");
* you may not use this file except in compliance with the License.
* You may obtain a copy of the License at
*
*    http://www.apache.org/licenses/LICENSE-2.0
*
* Unless required by applicable law or agreed to in writing, software
* distributed under the License is distributed on an "AS IS" BASIS,
* WITHOUT WARRANTIES OR CONDITIONS OF ANY KIND, either express or implied.
* See the License for the specific language governing permissions and
* limitations under the License.
*
*
* ## Notice
*
* The original C++ code and copyright notice are from the [Boost library]{@link http://www.boost.org/doc/libs/1_64_0/boost/math/special_functions/beta.hpp}. The implementation has been modified for JavaScript.
*
* ```text
* (C) Copyright John Maddock 2006.
*
* Use, modification and distribution are subject to the
* Boost Software License, Version 1.0. (See accompanying file
* LICENSE or copy at http://www.boost.org/LICENSE_1_0.txt)
* ```
*/
/**
* @license Apache-2.0
*
* Copyright (c) 2018 The Stdlib Authors.
*
* Licensed under the Apache License, Version 2.0 (the "License");
* you may not use this file except in compliance with the License.
* You may obtain a copy of the License at
*
*    http://www.apache.org/licenses/LICENSE-2.0
*
* Unless required by applicable law or agreed to in writing, software
* distributed under the License is distributed on an "AS IS" BASIS,
* WITHOUT WARRANTIES OR CONDITIONS OF ANY KIND, either express or implied.
* See the License for the specific language governing permissions and
* limitations under the License.
*
*
* ## Notice
*
* The original C++ code and copyright notice are from the [Boost library]{@link http://www.boost.org/doc/libs/1_61_0/boost/math/special_functions/beta.hpp}. The implementation has been modified for JavaScript.
*
* ```text
* (C) Copyright John Maddock 2006.
* (C) Copyright Paul A. Bristow 2007.
*
* Use, modification and distribution are subject to the
* Boost Software License, Version 1.0. (See accompanying file
* LICENSE or copy at http://www.boost.org/LICENSE_1_0.txt)
* ```
*/
/**
* @license Apache-2.0
*
* Copyright (c) 2018 The Stdlib Authors.
*
* Licensed under the Apache License, Version 2.0 (the "License");
* you may not use this file except in compliance with the License.
* You may obtain a copy of the License at
*
*    http://www.apache.org/licenses/LICENSE-2.0
*
* Unless required by applicable law or agreed to in writing, software
* distributed under the License is distributed on an "AS IS" BASIS,
* WITHOUT WARRANTIES OR CONDITIONS OF ANY KIND, either express or implied.
* See the License for the specific language governing permissions and
* limitations under the License.
*
*
* ## Notice
*
* The original C++ code and copyright notice are from the [Boost library]{@link http://www.boost.org/doc/libs/1_81_0/boost/math/special_functions/detail/erf_inv.hpp}. This implementation follows the original, but has been modified for JavaScript.
*
* ```text
* (C) Copyright John Maddock 2006.
*
* Use, modification and distribution are subject to the
* Boost Software License, Version 1.0. (See accompanying file
* LICENSE or copy at http://www.boost.org/LICENSE_1_0.txt)
* ```
*/
/**
* @license Apache-2.0
*
* Copyright (c) 2018 The Stdlib Authors.
*
* Licensed under the Apache License, Version 2.0 (the "License");
* you may not use this file except in compliance with the License.
* You may obtain a copy of the License at
*
*    http://www.apache.org/licenses/LICENSE-2.0
*
* Unless required by applicable law or agreed to in writing, software
* distributed under the License is distributed on an "AS IS" BASIS,
* WITHOUT WARRANTIES OR CONDITIONS OF ANY KIND, either express or implied.
* See the License for the specific language governing permissions and
* limitations under the License.
*
*
* ## Notice
*
* The following copyright, license, and long comment were part of the original implementation available as part of [FreeBSD]{@link https://svnweb.freebsd.org/base/release/9.3.0/lib/msun/src/e_lgamma_r.c}. The implementation follows the original, but has been modified for JavaScript.
*
* ```text
* Copyright (C) 1993 by Sun Microsystems, Inc. All rights reserved.
*
* Developed at SunPro, a Sun Microsystems, Inc. business.
* Permission to use, copy, modify, and distribute this
* software is freely granted, provided that this notice
* is preserved.
* ```
*/
/**
* @license Apache-2.0
*
* Copyright (c) 2018 The Stdlib Authors.
*
* Licensed under the Apache License, Version 2.0 (the "License");
* you may not use this file except in compliance with the License.
* You may obtain a copy of the License at
*
*    http://www.apache.org/licenses/LICENSE-2.0
*
* Unless required by applicable law or agreed to in writing, software
* distributed under the License is distributed on an "AS IS" BASIS,
* WITHOUT WARRANTIES OR CONDITIONS OF ANY KIND, either express or implied.
* See the License for the specific language governing permissions and
* limitations under the License.
*
*
* ## Notice
*
* The original C++ code and copyright notice are from the [Boost library]{@link http://www.boost.org/doc/libs/1_64_0/boost/math/special_functions/detail/lgamma_small.hpp}. The implementation has been modified for JavaScript.
*
* ```text
* (C) Copyright John Maddock 2006-7, 2013-14.
* (C) Copyright Paul A. Bristow 2007, 2013-14.
* (C) Copyright Nikhar Agrawal 2013-14.
* (C) Copyright Christopher Kormanyos 2013-14.
*
* Use, modification and distribution are subject to the
* Boost Software License, Version 1.0. (See accompanying file
* LICENSE or copy at http://www.boost.org/LICENSE_1_0.txt)
* ```
*/
/**
* @license Apache-2.0
*
* Copyright (c) 2018 The Stdlib Authors.
*
* Licensed under the Apache License, Version 2.0 (the "License");
* you may not use this file except in compliance with the License.
* You may obtain a copy of the License at
*
*    http://www.apache.org/licenses/LICENSE-2.0
*
* Unless required by applicable law or agreed to in writing, software
* distributed under the License is distributed on an "AS IS" BASIS,
* WITHOUT WARRANTIES OR CONDITIONS OF ANY KIND, either express or implied.
* See the License for the specific language governing permissions and
* limitations under the License.
*
*
* ## Notice
*
* The original C++ code and copyright notice are from the [Boost library]{@link http://www.boost.org/doc/libs/1_64_0/boost/math/special_functions/gamma.hpp}. The implementation has been modified for JavaScript.
*
* ```text
* (C) Copyright John Maddock 2006-7, 2013-14.
* (C) Copyright Paul A. Bristow 2007, 2013-14.
* (C) Copyright Nikhar Agrawal 2013-14.
* (C) Copyright Christopher Kormanyos 2013-14.
*
* Use, modification and distribution are subject to the
* Boost Software License, Version 1.0. (See accompanying file
* LICENSE or copy at http://www.boost.org/LICENSE_1_0.txt)
* ```
*/
/**
* @license Apache-2.0
*
* Copyright (c) 2018 The Stdlib Authors.
*
* Licensed under the Apache License, Version 2.0 (the "License");
* you may not use this file except in compliance with the License.
* You may obtain a copy of the License at
*
*    http://www.apache.org/licenses/LICENSE-2.0
*
* Unless required by applicable law or agreed to in writing, software
* distributed under the License is distributed on an "AS IS" BASIS,
* WITHOUT WARRANTIES OR CONDITIONS OF ANY KIND, either express or implied.
* See the License for the specific language governing permissions and
* limitations under the License.
*
*
* ## Notice
*
* The original C++ code and copyright notice are from the [Boost library]{@link http://www.boost.org/doc/libs/1_62_0/boost/math/special_functions/gamma.hpp}. The implementation has been modified for JavaScript.
*
* ```text
* (C) Copyright John Maddock 2006-7, 2013-14.
* (C) Copyright Paul A. Bristow 2007, 2013-14.
* (C) Copyright Nikhar Agrawal 2013-14.
* (C) Christopher Kormanyos 2013-14.
*
* Use, modification and distribution are subject to the
* Boost Software License, Version 1.0. (See accompanying file
* LICENSE or copy at http://www.boost.org/LICENSE_1_0.txt)
* ```
*/
/**
* @license Apache-2.0
*
* Copyright (c) 2018 The Stdlib Authors.
*
* Licensed under the Apache License, Version 2.0 (the "License");
* you may not use this file except in compliance with the License.
* You may obtain a copy of the License at
*
*    http://www.apache.org/licenses/LICENSE-2.0
*
* Unless required by applicable law or agreed to in writing, software
* distributed under the License is distributed on an "AS IS" BASIS,
* WITHOUT WARRANTIES OR CONDITIONS OF ANY KIND, either express or implied.
* See the License for the specific language governing permissions and
* limitations under the License.
*
*
* ## Notice
*
* The original C++ code and copyright notice are from the [Boost library]{@link http://www.boost.org/doc/libs/1_62_0/boost/math/special_functions/detail/t_distribution_inv.hpp}. The implementation has been modified for JavaScript.
*
* ```text
* Copyright John Maddock 2006.
* Copyright Paul A. Bristow 2007.
*
* Use, modification and distribution are subject to the
* Boost Software License, Version 1.0. (See accompanying file
* LICENSE or copy at http://www.boost.org/LICENSE_1_0.txt)
* ```
*/
/**
* @license Apache-2.0
*
* Copyright (c) 2018 The Stdlib Authors.
*
* Licensed under the Apache License, Version 2.0 (the "License");
* you may not use this file except in compliance with the License.
* You may obtain a copy of the License at
*
*    http://www.apache.org/licenses/LICENSE-2.0
*
* Unless required by applicable law or agreed to in writing, software
* distributed under the License is distributed on an "AS IS" BASIS,
* WITHOUT WARRANTIES OR CONDITIONS OF ANY KIND, either express or implied.
* See the License for the specific language governing permissions and
* limitations under the License.
*
*
* ## Notice
*
* The original C++ code and copyright notice are from the [Boost library]{@link http://www.boost.org/doc/libs/1_61_0/boost/math/special_functions/detail/t_distribution_inv.hpp}. The implementation has been modified for JavaScript.
*
* ```text
* Copyright John Maddock 2006.
* Copyright Paul A. Bristow 2007.
*
* Use, modification and distribution are subject to the
* Boost Software License, Version 1.0. (See accompanying file
* LICENSE or copy at http://www.boost.org/LICENSE_1_0.txt)
* ```
*/
/**
* @license Apache-2.0
*
* Copyright (c) 2018 The Stdlib Authors.
*
* Licensed under the Apache License, Version 2.0 (the "License");
* you may not use this file except in compliance with the License.
* You may obtain a copy of the License at
*
*    http://www.apache.org/licenses/LICENSE-2.0
*
* Unless required by applicable law or agreed to in writing, software
* distributed under the License is distributed on an "AS IS" BASIS,
* WITHOUT WARRANTIES OR CONDITIONS OF ANY KIND, either express or implied.
* See the License for the specific language governing permissions and
* limitations under the License.
*
*
* ## Notice
*
* The original C++ code and copyright notice are from the [Boost library]{@link http://www.boost.org/doc/libs/1_64_0/boost/math/special_functions/detail/ibeta_inverse.hpp}. The implementation has been modified for JavaScript.
*
* ```text
* Copyright John Maddock 2006.
* Copyright Paul A. Bristow 2007.
*
* Use, modification and distribution are subject to the
* Boost Software License, Version 1.0. (See accompanying file
* LICENSE or copy at http://www.boost.org/LICENSE_1_0.txt)
* ```
*/
/**
* @license Apache-2.0
*
* Copyright (c) 2018 The Stdlib Authors.
*
* Licensed under the Apache License, Version 2.0 (the "License");
* you may not use this file except in compliance with the License.
* You may obtain a copy of the License at
*
*    http://www.apache.org/licenses/LICENSE-2.0
*
* Unless required by applicable law or agreed to in writing, software
* distributed under the License is distributed on an "AS IS" BASIS,
* WITHOUT WARRANTIES OR CONDITIONS OF ANY KIND, either express or implied.
* See the License for the specific language governing permissions and
* limitations under the License.
*
*
* ## Notice
*
* The original C++ code and copyright notice are from the [Boost library]{@link http://www.boost.org/doc/libs/1_62_0/boost/math/special_functions/detail/ibeta_inverse.hpp}. The implementation has been modified for JavaScript.
*
* ```text
* Copyright John Maddock 2006.
* Copyright Paul A. Bristow 2007.
*
* Use, modification and distribution are subject to the
* Boost Software License, Version 1.0. (See accompanying file
* LICENSE or copy at http://www.boost.org/LICENSE_1_0.txt)
* ```
*/
/**
* @license Apache-2.0
*
* Copyright (c) 2018 The Stdlib Authors.
*
* Licensed under the Apache License, Version 2.0 (the "License");
* you may not use this file except in compliance with the License.
* You may obtain a copy of the License at
*
*    http://www.apache.org/licenses/LICENSE-2.0
*
* Unless required by applicable law or agreed to in writing, software
* distributed under the License is distributed on an "AS IS" BASIS,
* WITHOUT WARRANTIES OR CONDITIONS OF ANY KIND, either express or implied.
* See the License for the specific language governing permissions and
* limitations under the License.
*
*
* ## Notice
*
* The original C++ code and copyright notice are from the [Boost library]{@link http://www.boost.org/doc/libs/1_62_0/boost/math/tools/roots.hpp}. The implementation has been modified for JavaScript.
*
* ```text
* Copyright John Maddock 2006.
*
* Use, modification and distribution are subject to the
* Boost Software License, Version 1.0. (See accompanying file
* LICENSE or copy at http://www.boost.org/LICENSE_1_0.txt)
* ```
*/
