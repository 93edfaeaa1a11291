-- A home as the fermata of schema 2 left it: one made-up solve, recorded from a virtual cube.
BEGIN TRANSACTION;
CREATE TABLE capture (
    id INTEGER PRIMARY KEY AUTOINCREMENT,
    uuid TEXT NOT NULL UNIQUE,
    kind TEXT NOT NULL CHECK (kind IN ('radio', 'stream')),
    boot_id TEXT NOT NULL,
    started_wall_ms INTEGER NOT NULL,
    started_mono_ns INTEGER NOT NULL,
    zone TEXT NOT NULL,
    cube TEXT NOT NULL,
    solver TEXT NOT NULL,
    hand TEXT NOT NULL CHECK (hand IN ('left', 'right', 'two', 'unknown')),
    profile_id INTEGER REFERENCES profile (id),
    origin TEXT NOT NULL,
    header TEXT NOT NULL,
    truth TEXT NOT NULL,
    CHECK ((kind = 'radio') = (profile_id IS NOT NULL))
) STRICT;
INSERT INTO "capture" VALUES(1,'ad7cdc0c-8e23-4412-81df-2448172e676c','radio','00000000-0000-4000-8000-000000000001',1795551000000,32134919900,'Etc/UTC','galley cube','cook','left',1,'radio','','{"kind":"rehearsal","seed":1,"solves":1,"attempts":[{"number":1,"note":"before the last crossing","scramble":{"words":"B2 L2 B2 D F2 U B2 U2 L2 U2 F2 L2 U'' R'' F L'' D'' B'' D'' U L2 B''","announced":true,"hold":"UF","turns":{"from":0,"to":33},"from_solved":true},"solve":{"solved":true,"hold":"DB","turns":{"from":33,"to":96},"moves":[{"move":"R2","turns":{"from":33,"to":35},"slip":false,"rotation":false},{"move":"F","turns":{"from":35,"to":36},"slip":false,"rotation":false},{"move":"U''","turns":{"from":36,"to":37},"slip":false,"rotation":false},{"move":"l","turns":{"from":37,"to":38},"slip":false,"rotation":false},{"move":"U''","turns":{"from":38,"to":39},"slip":false,"rotation":false},{"move":"r","turns":{"from":39,"to":40},"slip":false,"rotation":false},{"move":"R","turns":{"from":40,"to":41},"slip":false,"rotation":false},{"move":"F","turns":{"from":41,"to":42},"slip":false,"rotation":false},{"move":"R''","turns":{"from":42,"to":43},"slip":false,"rotation":false},{"move":"R''","turns":{"from":43,"to":44},"slip":true,"rotation":false},{"move":"R","turns":{"from":44,"to":45},"slip":true,"rotation":false},{"move":"F''","turns":{"from":45,"to":46},"slip":false,"rotation":false},{"move":"R''","turns":{"from":46,"to":47},"slip":false,"rotation":false},{"move":"U","turns":{"from":47,"to":48},"slip":false,"rotation":false},{"move":"R","turns":{"from":48,"to":49},"slip":false,"rotation":false},{"move":"U2","turns":{"from":49,"to":51},"slip":false,"rotation":false},{"move":"R''","turns":{"from":51,"to":52},"slip":false,"rotation":false},{"move":"U''","turns":{"from":52,"to":53},"slip":false,"rotation":false},{"move":"R","turns":{"from":53,"to":54},"slip":false,"rotation":false},{"move":"U","turns":{"from":54,"to":55},"slip":false,"rotation":false},{"move":"R''","turns":{"from":55,"to":56},"slip":false,"rotation":false},{"move":"U2","turns":{"from":56,"to":58},"slip":false,"rotation":false},{"move":"F","turns":{"from":58,"to":59},"slip":false,"rotation":false},{"move":"U''","turns":{"from":59,"to":60},"slip":false,"rotation":false},{"move":"F''","turns":{"from":60,"to":61},"slip":false,"rotation":false},{"move":"R","turns":{"from":61,"to":62},"slip":false,"rotation":false},{"move":"U","turns":{"from":62,"to":63},"slip":false,"rotation":false},{"move":"R","turns":{"from":63,"to":64},"slip":false,"rotation":false},{"move":"D''","turns":{"from":64,"to":65},"slip":false,"rotation":false},{"move":"R''","turns":{"from":65,"to":66},"slip":false,"rotation":false},{"move":"U''","turns":{"from":66,"to":67},"slip":false,"rotation":false},{"move":"R","turns":{"from":67,"to":68},"slip":false,"rotation":false},{"move":"D","turns":{"from":68,"to":69},"slip":false,"rotation":false},{"move":"R2","turns":{"from":69,"to":71},"slip":false,"rotation":false},{"move":"U''","turns":{"from":71,"to":72},"slip":false,"rotation":false},{"move":"r''","turns":{"from":72,"to":73},"slip":false,"rotation":false},{"move":"U2","turns":{"from":73,"to":75},"slip":false,"rotation":false},{"move":"R","turns":{"from":75,"to":76},"slip":false,"rotation":false},{"move":"U","turns":{"from":76,"to":77},"slip":false,"rotation":false},{"move":"U","turns":{"from":77,"to":78},"slip":true,"rotation":false},{"move":"U''","turns":{"from":78,"to":79},"slip":true,"rotation":false},{"move":"R''","turns":{"from":79,"to":80},"slip":false,"rotation":false},{"move":"U","turns":{"from":80,"to":81},"slip":false,"rotation":false},{"move":"r","turns":{"from":81,"to":82},"slip":false,"rotation":false},{"move":"F","turns":{"from":82,"to":83},"slip":false,"rotation":false},{"move":"U","turns":{"from":83,"to":84},"slip":false,"rotation":false},{"move":"R''","turns":{"from":84,"to":85},"slip":false,"rotation":false},{"move":"D''","turns":{"from":85,"to":86},"slip":false,"rotation":false},{"move":"R","turns":{"from":86,"to":87},"slip":false,"rotation":false},{"move":"U","turns":{"from":87,"to":88},"slip":false,"rotation":false},{"move":"R''","turns":{"from":88,"to":89},"slip":false,"rotation":false},{"move":"D","turns":{"from":89,"to":90},"slip":false,"rotation":false},{"move":"R","turns":{"from":90,"to":91},"slip":false,"rotation":false},{"move":"U2","turns":{"from":91,"to":93},"slip":false,"rotation":false},{"move":"F''","turns":{"from":93,"to":94},"slip":false,"rotation":false},{"move":"U2","turns":{"from":94,"to":96},"slip":false,"rotation":false}],"stages":[{"name":"cross","case_name":"","turns":{"from":33,"to":40},"looks":1},{"name":"pair1","case_name":"FR","turns":{"from":40,"to":47},"looks":1},{"name":"pair2","case_name":"BR","turns":{"from":47,"to":56},"looks":1},{"name":"pair3","case_name":"BL","turns":{"from":56,"to":61},"looks":1},{"name":"pair4","case_name":"FL","turns":{"from":61,"to":71},"looks":1},{"name":"orient","case_name":"5","turns":{"from":71,"to":82},"looks":1},{"name":"permute","case_name":"Ab","turns":{"from":82,"to":94},"looks":1},{"name":"auf","case_name":"","turns":{"from":94,"to":96},"looks":1}],"rhythm":{"motor_micros":[174080,189940,189448,228048,171634,206026,213310,250033,220243,93888,108728,339642,241810,248157,216926,341903,170896,190569,277981,301037,193428,220798,356543,171950,267663,356529,262723,177042,264232,210169,251766,218032,154185,229674,222974,190083,171360,184875,218472,236523,140464,234194,182361,122923,186157,242931,220574,203016,321713,198660,220341,216281,189904,255158,210190,155889,165391,237188,123853,158446,226373,194387],"rests":[{"after_turn":36,"length_micros":194376,"cause":"REGRIP"},{"after_turn":43,"length_micros":159688,"cause":"SLIP"},{"after_turn":60,"length_micros":425372,"cause":"LOOK_AHEAD"},{"after_turn":62,"length_micros":174694,"cause":"REGRIP"},{"after_turn":70,"length_micros":738274,"cause":"RECOGNITION"},{"after_turn":77,"length_micros":226056,"cause":"SLIP"},{"after_turn":81,"length_micros":897971,"cause":"RECOGNITION"}],"regrips":[{"before_turn":37,"reason":"REACH"},{"before_turn":63,"reason":"WRIST"}]}}}],"others":[]}');
CREATE TABLE characteristic (
    id INTEGER PRIMARY KEY,
    uuid TEXT NOT NULL UNIQUE
) STRICT;
INSERT INTO "characteristic" VALUES(1,'acacdcfd-2a24-4e64-b0e7-16471a29d738');
INSERT INTO "characteristic" VALUES(2,'00002a19-0000-1000-8000-00805f9b34fb');
INSERT INTO "characteristic" VALUES(3,'b3cb4267-3d05-43d3-a261-fbfdfbcd347f');
CREATE TABLE connection (
    capture_id INTEGER NOT NULL REFERENCES capture (id),
    number INTEGER NOT NULL,
    first_ns INTEGER NOT NULL,
    PRIMARY KEY (capture_id, number)
) STRICT, WITHOUT ROWID;
INSERT INTO "connection" VALUES(1,0,41031694600);
INSERT INTO "connection" VALUES(1,1,43827318500);
CREATE TABLE derivation (
    capture_id INTEGER PRIMARY KEY REFERENCES capture (id),
    code_version TEXT NOT NULL,
    extent TEXT NOT NULL,
    heard INTEGER NOT NULL,
    repaired INTEGER NOT NULL,
    lost INTEGER NOT NULL,
    attempts INTEGER NOT NULL
) STRICT;
INSERT INTO "derivation" VALUES(1,'analysis-1/daemon-3/hands-2-6226c4a32356','1.101 - 0',96,0,0,1);
CREATE TABLE dropped (
    capture_id INTEGER NOT NULL,
    connection INTEGER NOT NULL,
    ordinal INTEGER NOT NULL,
    at_ns INTEGER NOT NULL,
    frames INTEGER NOT NULL CHECK (frames > 0),
    PRIMARY KEY (capture_id, connection, ordinal),
    FOREIGN KEY (capture_id, connection) REFERENCES connection (capture_id, number)
) STRICT, WITHOUT ROWID;
CREATE TABLE event (
    capture_id INTEGER NOT NULL REFERENCES capture (id),
    ordinal INTEGER NOT NULL,
    version INTEGER NOT NULL,
    kind TEXT NOT NULL,
    line TEXT NOT NULL,
    PRIMARY KEY (capture_id, ordinal)
) STRICT, WITHOUT ROWID;
INSERT INTO "event" VALUES(1,0,1,'mark','{"mark":"scramble","text":"B2 L2 B2 D F2 U B2 U2 L2 U2 F2 L2 U'' R'' F L'' D'' B'' D'' U L2 B''","at":22640419}');
CREATE TABLE frame (
    capture_id INTEGER NOT NULL,
    connection INTEGER NOT NULL,
    ordinal INTEGER NOT NULL,
    arrival_ns INTEGER NOT NULL,
    characteristic_id INTEGER NOT NULL REFERENCES characteristic (id),
    bytes BLOB NOT NULL,
    PRIMARY KEY (capture_id, connection, ordinal),
    FOREIGN KEY (capture_id, connection) REFERENCES connection (capture_id, number)
) STRICT, WITHOUT ROWID;
INSERT INTO "frame" VALUES(1,1,3,53264663300,1,X'AE000080EE360088C6FA00001032547698BA0000AC');
INSERT INTO "frame" VALUES(1,1,4,53593152300,2,X'57');
INSERT INTO "frame" VALUES(1,1,5,53593152300,2,X'57');
INSERT INTO "frame" VALUES(1,1,6,57784817300,3,X'D40100F6FD3600010F0000000000000000000043');
INSERT INTO "frame" VALUES(1,1,7,58027595700,3,X'D40200D0FE3600110F4F1B0000000000000000BD');
INSERT INTO "frame" VALUES(1,1,8,58257745600,3,X'D40300C2FF3600210C4F1E4F1B00000000000085');
INSERT INTO "frame" VALUES(1,1,9,58433613200,3,X'D4040059003700310CEC124F1E4F1B0000000028');
INSERT INTO "frame" VALUES(1,1,10,58646611200,3,X'D4050056013700410FAC1FEC124F1E4F1B00007B');
INSERT INTO "frame" VALUES(1,1,11,58890116800,3,X'D4060046023700510F0F1EAC1FEC124F1E4F1BE7');
INSERT INTO "frame" VALUES(1,1,12,59248755200,3,X'D40700A803370051094F2C0F1EAC1FEC124F1E40');
INSERT INTO "frame" VALUES(1,1,13,59518506900,3,X'D40800C0043700510609234F2C0F1EAC1FEC12FE');
INSERT INTO "frame" VALUES(1,1,14,59711182800,3,X'D409005C0537005106861309234F2C0F1EAC1F71');
INSERT INTO "frame" VALUES(1,1,15,60098766600,3,X'D40A00FB0637005100E633861309234F2C0F1EA4');
INSERT INTO "frame" VALUES(1,1,16,60425460400,3,X'D40B0044083700510F2029E633861309234F2C09');
INSERT INTO "frame" VALUES(1,1,17,60636767000,3,X'D40C00FE083700510F4F172029E633861309236D');
INSERT INTO "frame" VALUES(1,1,18,60897868000,3,X'D40D00250A37005100EF244F172029E6338613E5');
INSERT INTO "frame" VALUES(1,1,19,61141894400,3,X'D40E00130B37005100C01DEF244F172029E633F5');
INSERT INTO "frame" VALUES(1,1,20,61467889900,3,X'D40F005D0C3700510C4029C01DEF244F17202952');
INSERT INTO "frame" VALUES(1,1,21,61619114400,3,X'D41000DD0C3700510C0C104029C01DEF244F17F3');
INSERT INTO "frame" VALUES(1,1,22,61959197700,3,X'D41100310E370051008C2A0C104029C01DEF24E4');
INSERT INTO "frame" VALUES(1,1,23,62103956100,3,X'D41200D30E3700510040148C2A0C104029C01DB2');
INSERT INTO "frame" VALUES(1,1,24,62375063400,3,X'D41300E10F37005106C02140148C2A0C10402983');
INSERT INTO "frame" VALUES(1,1,25,62457891100,3,X'D41400331037005106460AC02140148C2A0C10D7');
INSERT INTO "frame" VALUES(1,1,26,62793417300,3,X'D415007D113700510C4629460AC02140148C2AA4');
INSERT INTO "frame" VALUES(1,1,27,62955547800,3,X'D416000D123700510C0C124629460AC021401442');
INSERT INTO "frame" VALUES(1,1,28,63116597400,3,X'D41700C912370051028C170C124629460AC021C2');
INSERT INTO "frame" VALUES(1,1,29,63366184800,3,X'D41800B01337005105E21C8C170C124629460A38');
INSERT INTO "frame" VALUES(1,1,30,63755808000,3,X'D419002E1537005106C52FE21C8C170C124629AE');
INSERT INTO "frame" VALUES(1,1,31,64044977300,3,X'D41A0068163700510E4627C52FE21C8C170C1248');
INSERT INTO "frame" VALUES(1,1,32,64382296000,3,X'D41B00A4173700510B8E274627C52FE21C8C170C');
INSERT INTO "frame" VALUES(1,1,33,64602085000,3,X'D41C008518370051112B1C8E274627C52FE21C2D');
INSERT INTO "frame" VALUES(1,1,34,64930628400,3,X'D41D00D5193700510B112A2B1C8E274627C52F31');
INSERT INTO "frame" VALUES(1,1,35,65319565500,3,X'D41E00441B37005100EB2D112A2B1C8E27462715');
INSERT INTO "frame" VALUES(1,1,36,65564616800,3,X'D41F004D1C3700510C2021EB2D112A2B1C8E2779');
INSERT INTO "frame" VALUES(1,1,37,65739179400,3,X'D42000F31C3700510CCC142021EB2D112A2B1C68');
INSERT INTO "frame" VALUES(1,1,38,65978003100,3,X'D42100D81D37005111AC1CCC142021EB2D112A20');
INSERT INTO "frame" VALUES(1,1,39,70387632100,3,X'D422001F2F37005103F1FFAC1CCC142021EB2DDA');
INSERT INTO "frame" VALUES(1,1,40,70558978100,3,X'D42300CE2F37005103E315F1FFAC1CCC14202184');
INSERT INTO "frame" VALUES(1,1,41,70744225700,3,X'D424008B303700510FA317E315F1FFAC1CCC1493');
INSERT INTO "frame" VALUES(1,1,42,70921818100,3,X'D4250049313700510BCF17A317E315F1FFAC1C8B');
INSERT INTO "frame" VALUES(1,1,43,71336338000,3,X'D42600EF3237005103CB34CF17A317E315F1FF2B');
INSERT INTO "frame" VALUES(1,1,44,71517069400,3,X'D427009B33370051088315CB34CF17A317E3157B');
INSERT INTO "frame" VALUES(1,1,45,71734302100,3,X'D4280069343700510CC8198315CB34CF17A31746');
INSERT INTO "frame" VALUES(1,1,46,71947810000,3,X'D429003E3537005103AC1AC8198315CB34CF17E5');
INSERT INTO "frame" VALUES(1,1,47,72207284500,3,X'D42A0038363700510F431FAC1AC8198315CB341C');
INSERT INTO "frame" VALUES(1,1,48,72428948200,3,X'D42B00153737005105AF1B431FAC1AC81983150D');
INSERT INTO "frame" VALUES(1,1,49,72508948200,3,X'D42C00723737005105A50BAF1B431FAC1AC81921');
INSERT INTO "frame" VALUES(1,1,50,72776581300,3,X'D42D007F3837005103A521A50BAF1B431FAC1AAA');
INSERT INTO "frame" VALUES(1,1,51,73110960300,3,X'D42E00D33937005111832AA521A50BAF1B431F88');
INSERT INTO "frame" VALUES(1,1,52,73358665900,3,X'D42F00C43A37005105311E832AA521A50BAF1BF5');
INSERT INTO "frame" VALUES(1,1,53,73614197200,3,X'D43000BD3B37005109251F311E832AA521A50BD6');
INSERT INTO "frame" VALUES(1,1,54,73840982800,3,X'D43100953C37005103091B251F311E832AA521A0');
INSERT INTO "frame" VALUES(1,1,55,74173668700,3,X'D43200EB3D37005109C32A091B251F311E832A7B');
INSERT INTO "frame" VALUES(1,1,56,74342651000,3,X'D43300963E370051096915C32A091B251F311EF6');
INSERT INTO "frame" VALUES(1,1,57,74528786800,3,X'D43400553F37005105E9176915C32A091B251F30');
INSERT INTO "frame" VALUES(1,1,58,74819028900,3,X'D435006B403700510BC522E9176915C32A091BCA');
INSERT INTO "frame" VALUES(1,1,59,75121714800,3,X'D43600984137005103AB25C522E9176915C32A5C');
INSERT INTO "frame" VALUES(1,1,60,75294267500,3,X'D437005942370051092318AB25C522E917691503');
INSERT INTO "frame" VALUES(1,1,61,75514529200,3,X'D43800364337005105A91B2318AB25C522E91784');
INSERT INTO "frame" VALUES(1,1,62,75871051300,3,X'D439009B4437005109A52CA91B2318AB25C52243');
INSERT INTO "frame" VALUES(1,1,63,76060424100,3,X'D43A004745370051098915A52CA91B2318AB25EF');
INSERT INTO "frame" VALUES(1,1,64,76330151300,3,X'D43B0052463700510F69218915A52CA91B231823');
INSERT INTO "frame" VALUES(1,1,65,76688796800,3,X'D43C00B7473700510BAF2C69218915A52CA91BC2');
INSERT INTO "frame" VALUES(1,1,66,76955326200,3,X'D43D00BD4837005111CB20AF2C69218915A52C29');
INSERT INTO "frame" VALUES(1,1,67,77560080100,3,X'D43E00184B37005103714BCB20AF2C69218915D8');
INSERT INTO "frame" VALUES(1,1,68,77796879400,3,X'D43F00204C370051090321714BCB20AF2C69218A');
INSERT INTO "frame" VALUES(1,1,69,78188436700,3,X'D44000A14D3700510329300321714BCB20AF2C6C');
INSERT INTO "frame" VALUES(1,1,70,78444354800,3,X'D441009D4E37005102831F29300321714BCB20EF');
INSERT INTO "frame" VALUES(1,1,71,78665677100,3,X'D44200774F37005105421B831F29300321714B2D');
INSERT INTO "frame" VALUES(1,1,72,78817867300,3,X'D4430011503700510B4513421B831F29300321E6');
INSERT INTO "frame" VALUES(1,1,73,79055237500,3,X'D44400F75037005103CB1C4513421B831F29308B');
INSERT INTO "frame" VALUES(1,1,74,79257277200,3,X'D44500D65137005100E31BCB1C4513421B831F47');
INSERT INTO "frame" VALUES(1,1,75,79443617300,3,X'D44600945237005105C017E31BCB1C4513421BE8');
INSERT INTO "frame" VALUES(1,1,76,79616588500,3,X'D447003F53370051056515C017E31BCB1C4513CC');
INSERT INTO "frame" VALUES(1,1,77,80560412300,3,X'D44800DA563700510B65736515C017E31BCB1C97');
INSERT INTO "frame" VALUES(1,1,78,80763298100,3,X'D44900B5573700510E6B1B65736515C017E31BF6');
INSERT INTO "frame" VALUES(1,1,79,80995295300,3,X'D44A00A158370051068E1D6B1B65736515C01717');
INSERT INTO "frame" VALUES(1,1,80,81147647800,3,X'D44B002E5937005106A6118E1D6B1B65736515A4');
INSERT INTO "frame" VALUES(1,1,81,81387122100,3,X'D44C00185A37005103461DA6118E1D6B1B657305');
INSERT INTO "frame" VALUES(1,1,82,81576628900,3,X'D44D00CE5A37005106C316461DA6118E1D6B1B00');
INSERT INTO "frame" VALUES(1,1,83,81700190400,3,X'D44E00495B37005106660FC316461DA6118E1D50');
INSERT INTO "frame" VALUES(1,1,84,82118784700,3,X'D44F00E55C370051088633660FC316461DA611D4');
INSERT INTO "frame" VALUES(1,1,85,82354188900,3,X'D45000D85D37005105681E8633660FC316461D29');
INSERT INTO "frame" VALUES(1,1,86,82561112900,3,X'D45100B55E37005106A51B681E8633660FC31666');
INSERT INTO "frame" VALUES(1,1,87,82764586500,3,X'D45200805F3700510C6619A51B681E8633660F6E');
INSERT INTO "frame" VALUES(1,1,88,83973480700,3,X'D4530044643700510F8C986619A51B681E8633C0');
INSERT INTO "frame" VALUES(1,1,89,84179898900,3,X'D454000A6537005109CF188C986619A51B681EB6');
INSERT INTO "frame" VALUES(1,1,90,84387311600,3,X'D45500E76537005105A91BCF188C986619A51B2F');
INSERT INTO "frame" VALUES(1,1,91,84642368000,3,X'D45600BF6637005102051BA91BCF188C98661945');
INSERT INTO "frame" VALUES(1,1,92,84806693500,3,X'D457007D6737005103C217051BA91BCF188C984C');
INSERT INTO "frame" VALUES(1,1,93,85053502600,3,X'D458007C6837005109E31FC217051BA91BCF18FA');
INSERT INTO "frame" VALUES(1,1,94,85255657300,3,X'D459004E6937005105491AE31FC217051BA91BF8');
INSERT INTO "frame" VALUES(1,1,95,85447641200,3,X'D45A00EA69370051008513491AE31FC217051B2E');
INSERT INTO "frame" VALUES(1,1,96,85601283700,3,X'D45B008F6A37005103A0148513491AE31FC2173D');
INSERT INTO "frame" VALUES(1,1,97,85838333600,3,X'D45C007D6B37005109C31DA0148513491AE31F16');
INSERT INTO "frame" VALUES(1,1,98,85947181400,3,X'D45D00F86B37005109690FC31DA0148513491AA4');
INSERT INTO "frame" VALUES(1,1,99,86099801100,3,X'D45E00976C37005111E913690FC31DA0148513D2');
INSERT INTO "frame" VALUES(1,1,100,86339412800,3,X'D45F00796D37005109511CE913690FC31DA01424');
INSERT INTO "frame" VALUES(1,1,101,86529595800,3,X'D460003C6E370051096918511CE913690FC31D34');
CREATE TABLE link_event (
    capture_id INTEGER NOT NULL,
    connection INTEGER NOT NULL,
    ordinal INTEGER NOT NULL,
    at_ns INTEGER NOT NULL,
    kind TEXT NOT NULL,
    detail TEXT NOT NULL,
    PRIMARY KEY (capture_id, connection, ordinal),
    FOREIGN KEY (capture_id, connection) REFERENCES connection (capture_id, number)
) STRICT, WITHOUT ROWID;
INSERT INTO "link_event" VALUES(1,0,0,41031694600,'service','present generation 1');
INSERT INTO "link_event" VALUES(1,0,1,43116445500,'discovered','02:00:00:00:00:02 galley cube');
INSERT INTO "link_event" VALUES(1,1,0,43827318500,'connected','02:00:00:00:00:02');
INSERT INTO "link_event" VALUES(1,1,1,44563300000,'resolved','');
INSERT INTO "link_event" VALUES(1,1,2,53013674400,'subscribed','b3cb4267-3d05-43d3-a261-fbfdfbcd347f 00002a19-0000-1000-8000-00805f9b34fb');
INSERT INTO "link_event" VALUES(1,1,102,89916250300,'lost','STOPPED');
CREATE TABLE night (
    day TEXT PRIMARY KEY,
    code_version TEXT NOT NULL,
    snapshot_id TEXT NOT NULL,
    json TEXT NOT NULL
) STRICT, WITHOUT ROWID;
INSERT INTO "night" VALUES('2026-11-24','analysis-1/daemon-3','d2b8240241c9','{"day":"2026-11-24","solves":1,"abandoned":0,"best_us":16157000,"mean_us":16157000,"spread_us":null,"average5_us":{"latest":null,"best":null},"trimmed12_us":{"latest":null,"best":null},"hotspots":[{"before":"cross","after":"pair1","count":1,"rest_us":null},{"before":"pair1","after":"pair2","count":1,"rest_us":null},{"before":"pair2","after":"pair3","count":1,"rest_us":null},{"before":"pair3","after":"pair4","count":1,"rest_us":null},{"before":"pair4","after":"orient","count":1,"rest_us":null},{"before":"orient","after":"permute","count":1,"rest_us":null},{"before":"permute","after":"auf","count":1,"rest_us":null}],"derived":{"code":"analysis-1","snapshot":"d2b8240241c9"}}');
CREATE TABLE profile (
    id INTEGER PRIMARY KEY,
    hash TEXT NOT NULL UNIQUE,
    json TEXT NOT NULL
) STRICT;
INSERT INTO "profile" VALUES(1,'251a565e8877702a49069bb13fb7a5e24b92112aa28ff3da4bc31b7bf1ceaf22','{
  "format": "stream-profile",
  "version": 1,
  "name": "Fermata open layout 1",
  "recognise": { "service": "9e4824b2-a5f5-4d89-9ca7-68bc6d634610" },
  "colours": {
    "U": "#f7f7f2", "R": "#c8252c", "F": "#1f9d55", "D": "#f2c80f", "L": "#ee7d1a", "B": "#1f5fbf"
  },
  "subscribe": [
    { "characteristic": "b3cb4267-3d05-43d3-a261-fbfdfbcd347f", "frames": ["turns"] },
    { "characteristic": "0f15a9f1-48bc-4c2d-9b66-f78863c0a1f1", "frames": ["lie"] },
    { "characteristic": "2a19", "frames": ["battery"] }
  ],
  "read": [
    { "characteristic": "acacdcfd-2a24-4e64-b0e7-16471a29d738", "frames": ["state"] },
    { "characteristic": "2a19", "frames": ["battery"] }
  ],
  "frames": {
    "turns": {
      "kind": "turns",
      "bytes": 20,
      "constants": [{ "byte": 0, "value": 212 }],
      "sequence": { "byte": 1, "bits": 16 },
      "clock": { "byte": 3, "bits": 32, "tickMicros": 1000 },
      "fresh": { "byte": 7, "bits": 4 },
      "code": { "byte": 8, "bits": 5 },
      "history": {
        "stride": 16,
        "entries": 5,
        "order": "newest-first",
        "count": { "byte": 7, "bit": 4, "bits": 4 },
        "code": { "byte": 9, "bits": 5 },
        "before": { "byte": 9, "bit": 5, "bits": 11, "saturates": true }
      },
      "turns": {
        "0": "U", "1": "U2", "2": "U''",
        "3": "R", "4": "R2", "5": "R''",
        "6": "F", "7": "F2", "8": "F''",
        "9": "D", "10": "D2", "11": "D''",
        "12": "L", "13": "L2", "14": "L''",
        "15": "B", "16": "B2", "17": "B''"
      },
      "checksums": [{ "kind": "crc8", "byte": 19, "from": 0, "to": 19, "polynomial": 7, "initial": 255 }]
    },
    "state": {
      "kind": "state",
      "bytes": 21,
      "constants": [{ "byte": 0, "value": 174 }],
      "sequence": { "byte": 1, "bits": 16 },
      "clock": { "byte": 3, "bits": 32, "tickMicros": 1000 },
      "cubies": {
        "corners": ["URF", "UFL", "ULB", "UBR", "DFR", "DLF", "DBL", "DRB"],
        "edges": ["UR", "UF", "UL", "UB", "DR", "DF", "DL", "DB", "FR", "FL", "BL", "BR"],
        "cornerPlaces": { "byte": 7, "bits": 3 },
        "cornerTwists": { "byte": 10, "bits": 2 },
        "edgePlaces": { "byte": 12, "bits": 4 },
        "edgeFlips": { "byte": 18, "bits": 1 }
      },
      "checksums": [{ "kind": "crc8", "byte": 20, "from": 0, "to": 20, "polynomial": 7, "initial": 255 }]
    },
    "lie": {
      "kind": "orientation",
      "bytes": 14,
      "constants": [{ "byte": 0, "value": 197 }],
      "clock": { "byte": 1, "bits": 32, "tickMicros": 1000 },
      "quaternion": {
        "w": { "byte": 5, "bits": 16, "signed": true },
        "x": { "byte": 7, "bits": 16, "signed": true },
        "y": { "byte": 9, "bits": 16, "signed": true },
        "z": { "byte": 11, "bits": 16, "signed": true },
        "one": 16384
      },
      "takes": "sensor-to-world",
      "axes": { "x": "R", "y": "B", "z": "U" },
      "up": "z",
      "checksums": [{ "kind": "crc8", "byte": 13, "from": 0, "to": 13, "polynomial": 7, "initial": 255 }]
    },
    "battery": { "kind": "battery", "bytes": 1, "percent": { "byte": 0 } }
  }
}
');
CREATE TABLE snapshot (
    id TEXT PRIMARY KEY,
    day TEXT NOT NULL,
    json TEXT NOT NULL
) STRICT, WITHOUT ROWID;
INSERT INTO "snapshot" VALUES('d2b8240241c9','2026-11-24','{"median_micros":221000,"log_deviation":0.227990014313939,"deviations":2.5,"floor_micros":250000,"intervals":62}');
CREATE TABLE solve (
    id TEXT PRIMARY KEY,
    capture_id INTEGER NOT NULL REFERENCES capture (id),
    day TEXT NOT NULL,
    started_wall_ms INTEGER NOT NULL,
    first_turn INTEGER NOT NULL,
    code_version TEXT NOT NULL,
    snapshot_id TEXT NOT NULL,
    summary TEXT NOT NULL,
    json TEXT NOT NULL
) STRICT, WITHOUT ROWID;
INSERT INTO "solve" VALUES('1-33',1,'2026-11-24',1795551038225,33,'analysis-1/daemon-3/hands-2-6226c4a32356','d2b8240241c9','{"id":"1-33","day":"2026-11-24","number":0,"started_at":"2026-11-24T20:10:38","hand":"left","solved":true,"outcome":"solved","set_aside":false,"time_us":16157000,"turns":63,"lost":0,"method":"CFOP","rest_us":3580000,"stages_us":{"cross":1354000,"pair1":1627000,"pair2":2162000,"pair3":1415000,"pair4":2690000,"orient":3137000,"permute":3351000,"auf":421000}}','{"id":"1-33","day":"2026-11-24","number":0,"started_at":"2026-11-24T20:10:38","hand":"left","clock":"device","scramble":"B2 L2 B2 D F2 U B2 U2 L2 U2 F2 L2 U'' R'' F L'' D'' B'' D'' U L2 B''","start_facelets":"RLLFURLBDFDBURRDDUULRRFBFLBDDRRDFLDRFLFFLBUFLDUUUBUBBB","face_colours":{"U":"white","R":"red","F":"green","D":"yellow","L":"orange","B":"blue"},"solved":true,"outcome":"solved","set_aside":false,"scramble_end":{"known":"announced_state","probability":1.0},"time_us":16157000,"gap_us":4423000,"method":"CFOP","cross_colour":"white","turns":[{"index":0,"at_us":0,"core":"R","source":"heard","hand":"R","hold":"DB","p":0.877},{"index":1,"at_us":175000,"core":"R","source":"heard","hand":"R","hold":"DB","p":0.877},{"index":2,"at_us":364000,"core":"B","source":"heard","hand":"F","hold":"DB","p":0.879},{"index":3,"at_us":554000,"core":"D''","source":"heard","hand":"U''","hold":"DB","p":0.924},{"index":4,"at_us":976000,"core":"R","source":"heard","hand":"R","hold":"DB","p":0.782},{"index":5,"at_us":1148000,"core":"F''","source":"heard","hand":"B''","hold":"DB","p":0.782},{"index":6,"at_us":1354000,"core":"L","source":"heard","hand":"L","hold":"DB","p":0.962},{"index":7,"at_us":1567000,"core":"R","source":"heard","hand":"R","hold":"DB","p":0.967},{"index":8,"at_us":1817000,"core":"B","source":"heard","hand":"F","hold":"DB","p":0.968},{"index":9,"at_us":2038000,"core":"R''","source":"heard","hand":"R''","hold":"DB","p":0.976},{"index":10,"at_us":2131000,"core":"R''","source":"heard","hand":"R''","hold":"DB","p":0.976},{"index":11,"at_us":2400000,"core":"R","source":"heard","hand":"R","hold":"DB","p":0.98},{"index":12,"at_us":2740000,"core":"B''","source":"heard","hand":"F''","hold":"DB","p":0.985},{"index":13,"at_us":2981000,"core":"R''","source":"heard","hand":"R''","hold":"DB","p":0.996},{"index":14,"at_us":3230000,"core":"D","source":"heard","hand":"U","hold":"DB","p":0.999},{"index":15,"at_us":3446000,"core":"R","source":"heard","hand":"R","hold":"DB","p":0.999},{"index":16,"at_us":3788000,"core":"D","source":"heard","hand":"U","hold":"DB","p":1.0},{"index":17,"at_us":3959000,"core":"D","source":"heard","hand":"U","hold":"DB","p":1.0},{"index":18,"at_us":4150000,"core":"R''","source":"heard","hand":"R''","hold":"DB","p":1.0},{"index":19,"at_us":4428000,"core":"D''","source":"heard","hand":"U''","hold":"DB","p":1.0},{"index":20,"at_us":4729000,"core":"R","source":"heard","hand":"R","hold":"DB","p":1.0},{"index":21,"at_us":4922000,"core":"D","source":"heard","hand":"U","hold":"DB","p":0.998},{"index":22,"at_us":5143000,"core":"R''","source":"heard","hand":"R''","hold":"DB","p":0.997},{"index":23,"at_us":5500000,"core":"D","source":"heard","hand":"U","hold":"DL","p":0.601},{"index":24,"at_us":5672000,"core":"D","source":"heard","hand":"U","hold":"DL","p":0.601},{"index":25,"at_us":5939000,"core":"B","source":"heard","hand":"R","hold":"DL","p":0.602},{"index":26,"at_us":6296000,"core":"D''","source":"heard","hand":"U''","hold":"DL","p":0.602},{"index":27,"at_us":6558000,"core":"B''","source":"heard","hand":"R''","hold":"DL","p":0.58},{"index":28,"at_us":7161000,"core":"R","source":"heard","hand":"R","hold":"DB","p":0.973},{"index":29,"at_us":7425000,"core":"D","source":"heard","hand":"U","hold":"DB","p":0.981},{"index":30,"at_us":7810000,"core":"R","source":"heard","hand":"R","hold":"DB","p":0.981},{"index":31,"at_us":8062000,"core":"U''","source":"heard","hand":"D''","hold":"DB","p":0.982},{"index":32,"at_us":8280000,"core":"R''","source":"heard","hand":"R''","hold":"DB","p":0.982},{"index":33,"at_us":8434000,"core":"D''","source":"heard","hand":"U''","hold":"DB","p":0.983},{"index":34,"at_us":8664000,"core":"R","source":"heard","hand":"R","hold":"DB","p":0.982},{"index":35,"at_us":8887000,"core":"U","source":"heard","hand":"D","hold":"DB","p":0.969},{"index":36,"at_us":9077000,"core":"R''","source":"heard","hand":"R''","hold":"DB","p":0.958},{"index":37,"at_us":9248000,"core":"R''","source":"heard","hand":"R''","hold":"DB","p":0.958},{"index":38,"at_us":10171000,"core":"D''","source":"heard","hand":"U''","hold":"DB","p":0.876},{"index":39,"at_us":10390000,"core":"L''","source":"heard","hand":"r''","hold":"DB","p":0.664},{"index":40,"at_us":10626000,"core":"F","source":"heard","hand":"U","hold":"FD","p":0.657},{"index":41,"at_us":10767000,"core":"F","source":"heard","hand":"U","hold":"FD","p":0.657},{"index":42,"at_us":11001000,"core":"R","source":"heard","hand":"R","hold":"FD","p":0.791},{"index":43,"at_us":11183000,"core":"F","source":"heard","hand":"U","hold":"FD","p":0.747},{"index":44,"at_us":11306000,"core":"F","source":"heard","hand":"U","hold":"FD","p":0.747},{"index":45,"at_us":11718000,"core":"F''","source":"heard","hand":"U''","hold":"FD","p":0.728},{"index":46,"at_us":11961000,"core":"R''","source":"heard","hand":"R''","hold":"FD","p":0.696},{"index":47,"at_us":12182000,"core":"F","source":"heard","hand":"U","hold":"FD","p":0.691},{"index":48,"at_us":12385000,"core":"L","source":"heard","hand":"r","hold":"FD","p":0.744},{"index":49,"at_us":13605000,"core":"B","source":"heard","hand":"F","hold":"DB","p":0.797},{"index":50,"at_us":13803000,"core":"D","source":"heard","hand":"U","hold":"DB","p":0.843},{"index":51,"at_us":14024000,"core":"R''","source":"heard","hand":"R''","hold":"DB","p":0.844},{"index":52,"at_us":14240000,"core":"U''","source":"heard","hand":"D''","hold":"DB","p":0.877},{"index":53,"at_us":14430000,"core":"R","source":"heard","hand":"R","hold":"DB","p":0.892},{"index":54,"at_us":14685000,"core":"D","source":"heard","hand":"U","hold":"DB","p":0.892},{"index":55,"at_us":14895000,"core":"R''","source":"heard","hand":"R''","hold":"DB","p":0.89},{"index":56,"at_us":15051000,"core":"U","source":"heard","hand":"D","hold":"DB","p":0.83},{"index":57,"at_us":15216000,"core":"R","source":"heard","hand":"R","hold":"DB","p":0.834},{"index":58,"at_us":15454000,"core":"D","source":"heard","hand":"U","hold":"DB","p":0.777},{"index":59,"at_us":15577000,"core":"D","source":"heard","hand":"U","hold":"DB","p":0.777},{"index":60,"at_us":15736000,"core":"B''","source":"heard","hand":"F''","hold":"DB","p":0.769},{"index":61,"at_us":15962000,"core":"D","source":"heard","hand":"U","hold":"DB","p":0.769},{"index":62,"at_us":16157000,"core":"D","source":"heard","hand":"U","hold":"DB","p":0.769}],"rotations":[{"before_turn":23,"rotation":"y''","p":0.997},{"before_turn":28,"rotation":"y","p":0.58}],"regrips":[{"before_turn":4,"p":0.974},{"before_turn":5,"p":0.284},{"before_turn":6,"p":0.383},{"before_turn":7,"p":0.123},{"before_turn":9,"p":0.05},{"before_turn":12,"p":0.116},{"before_turn":23,"p":0.468},{"before_turn":25,"p":0.088},{"before_turn":26,"p":0.102},{"before_turn":28,"p":0.594},{"before_turn":30,"p":0.844},{"before_turn":36,"p":0.073},{"before_turn":38,"p":0.106},{"before_turn":39,"p":0.087},{"before_turn":40,"p":0.06},{"before_turn":42,"p":0.081},{"before_turn":45,"p":0.206},{"before_turn":46,"p":0.111},{"before_turn":49,"p":0.299},{"before_turn":50,"p":0.052},{"before_turn":61,"p":0.099}],"regrip_count":{"expected":5.89,"low":3,"high":10},"stages":[{"name":"cross","case":null,"faces":["U"],"from":0,"to":7,"start_us":0,"end_us":1354000,"parts":[]},{"name":"pair1","case":"DFR-UF","faces":["F","R"],"from":7,"to":14,"start_us":1354000,"end_us":2981000,"parts":[]},{"name":"pair2","case":"URF-UR","faces":["B","R"],"from":14,"to":23,"start_us":2981000,"end_us":5143000,"parts":[]},{"name":"pair3","case":"FUR-UR","faces":["B","L"],"from":23,"to":28,"start_us":5143000,"end_us":6558000,"parts":[]},{"name":"pair4","case":"URF-FR","faces":["F","L"],"from":28,"to":38,"start_us":6558000,"end_us":9248000,"parts":[]},{"name":"orient","case":"5","faces":[],"from":38,"to":49,"start_us":9248000,"end_us":12385000,"parts":[]},{"name":"permute","case":"Ab","faces":[],"from":49,"to":61,"start_us":12385000,"end_us":15736000,"parts":[]},{"name":"auf","case":null,"faces":[],"from":61,"to":63,"start_us":15736000,"end_us":16157000,"parts":[]}],"rests":[{"after_turn":3,"start_us":554000,"length_us":422000,"fermata":null},{"after_turn":27,"start_us":6558000,"length_us":603000,"fermata":null},{"after_turn":37,"start_us":9248000,"length_us":923000,"fermata":null},{"after_turn":44,"start_us":11306000,"length_us":412000,"fermata":null},{"after_turn":48,"start_us":12385000,"length_us":1220000,"fermata":null}],"gaps":[],"holds":{"known":"inferred","weights":"6226c4a32356","corrections":0,"inferred":null},"derived":{"code":"analysis-1","snapshot":"d2b8240241c9"}}');
CREATE TRIGGER frame_is_append_only BEFORE UPDATE ON frame
BEGIN SELECT RAISE(ABORT, 'frames are appended, never altered'); END;
CREATE TRIGGER event_is_append_only BEFORE UPDATE ON event
BEGIN SELECT RAISE(ABORT, 'events are appended, never altered'); END;
CREATE INDEX solve_by_day ON solve (day, started_wall_ms, capture_id, first_turn);
CREATE INDEX solve_by_capture ON solve (capture_id);
CREATE INDEX event_hand ON event (capture_id, ordinal) WHERE kind = 'hand';
DELETE FROM "sqlite_sequence";
INSERT INTO "sqlite_sequence" VALUES('capture',1);
COMMIT;
PRAGMA user_version = 2;
